import Big from 'big.js';
import { conventions } from '#lib/limits/conventions.ts';
import type { Spot } from '#shared/entries/step-name.ts';
import { converted, type Unit } from '#shared/units.ts';
import type { JudgedReading } from './record.ts';

type Kept = { at: number; value: number };

/** Extremes of the last minutes: the front of `most` is the greatest still inside, the front of `least` the least. */
class Extremes {
  private readonly most: Kept[] = [];
  private readonly least: Kept[] = [];
  private mostFrom = 0;
  private leastFrom = 0;

  add(kept: Kept): void {
    while (this.most.length > this.mostFrom && (this.most.at(-1)?.value ?? 0) <= kept.value) this.most.pop();
    while (this.least.length > this.leastFrom && (this.least.at(-1)?.value ?? 0) >= kept.value)
      this.least.pop();
    this.most.push(kept);
    this.least.push(kept);
  }

  /** Greatest and least later than `after`, or null where nothing is. */
  range(after: number): { most: number; least: number } | null {
    while ((this.most[this.mostFrom]?.at ?? after + 1) <= after) this.mostFrom++;
    while ((this.least[this.leastFrom]?.at ?? after + 1) <= after) this.leastFrom++;
    const most = this.most[this.mostFrom];
    const least = this.least[this.leastFrom];
    return most === undefined || least === undefined ? null : { most: most.value, least: least.value };
  }
}

const { jump } = conventions;
const withinMs = jump.within_min * 60_000;

/** Whether two values differ by more than the limit, in exact decimals where floats could be wrong. */
function differs(a: number, b: number, limit: number): boolean {
  const apart = Math.abs(a - b);
  return Math.abs(apart - limit) > 1e-9 ? apart > limit : new Big(a).minus(b).abs().gt(limit);
}

function isJump(value: number, unit: Unit, earlier: Record<Unit, Extremes>, after: number): boolean {
  const same = earlier[unit].range(after);
  const limit = unit === 'degF' ? jump.degF : jump.degC;
  if (same !== null && (differs(value, same.most, limit) || differs(value, same.least, limit))) return true;
  const other: Unit = unit === 'degF' ? 'degC' : 'degF';
  const mixed = earlier[other].range(after);
  if (mixed === null) return false;
  const inF = converted(value, unit, 'degF');
  return [mixed.most, mixed.least].some((there) => differs(inF, converted(there, other, 'degF'), jump.degF));
}

/**
 * Whether two food readings of one piece and spot, less than 10 minutes apart, differ by more than 60 °F (33 °C;
 * in two units 60 °F after exact conversion). Said, and changes no verdict. One pass with the extremes of the
 * last 10 minutes, so a logger's close readings cost no more than a cook's.
 */
export function hasJump(readings: readonly JudgedReading[], looks: readonly number[]): boolean {
  const bySpot = new Map<Spot | null, { last: number; earlier: Record<Unit, Extremes> }>();
  for (const index of looks) {
    const reading = readings[index];
    if (reading === undefined) continue;
    const { at, value, unit } = reading;
    let watch = bySpot.get(reading.spot);
    if (watch === undefined || at - watch.last >= withinMs) {
      watch = { last: at, earlier: { degF: new Extremes(), degC: new Extremes() } };
      bySpot.set(reading.spot, watch);
    } else if (isJump(value, unit, watch.earlier, at - withinMs)) return true;
    watch.last = at;
    watch.earlier[unit].add({ at, value });
  }
  return false;
}
