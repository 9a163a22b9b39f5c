/** Numbers by chance that come again from the same seed: 128 bits of state (small fast counter), so that ten million seeds do not meet. */
export class Chance {
  private a: number;
  private b: number;
  private c: number;
  private count = 1;

  constructor(seed: number) {
    this.a = seed >>> 0;
    this.b = Math.floor(seed / 2 ** 32) >>> 0;
    this.c = 0x9e3779b9;
    for (let turn = 0; turn < 12; turn++) this.bits();
  }

  private bits(): number {
    const sum = (this.a + this.b + this.count++) | 0;
    this.a = this.b ^ (this.b >>> 9);
    this.b = (this.c + (this.c << 3)) | 0;
    this.c = (((this.c << 21) | (this.c >>> 11)) + sum) | 0;
    return sum >>> 0;
  }

  /** From 0 on, below 1. */
  unit(): number {
    return this.bits() / 2 ** 32;
  }

  between(from: number, to: number): number {
    return from + (to - from) * this.unit();
  }

  /** A whole number from `from` to `to`, both included. */
  whole(from: number, to: number): number {
    return from + Math.floor(this.unit() * (to - from + 1));
  }

  is(share: number): boolean {
    return this.unit() < share;
  }

  one<T>(things: readonly [T, ...T[]]): T {
    return things[Math.floor(this.unit() * things.length)] ?? things[0];
  }
}
