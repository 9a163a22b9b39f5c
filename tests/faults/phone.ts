import { setTimeout as sleep } from 'node:timers/promises';
import type { Visitor } from '#bin/visitor.ts';
import type { Draft } from '#shared/entries/entry.ts';

type Receipt = { id: string; seq: number | null; problem: { problem: string } | null };

/** A phone as far as the book sees one: it sends, keeps what it was told, and sends again what it was not told. */
export class Phone {
  /** Number in the book by id: what the server acknowledged. */
  readonly told = new Map<string, number>();
  /** Every id that was sent, told or not. */
  readonly sent = new Set<string>();
  /** Receipts that contradict an earlier one, and refusals: both must stay empty. */
  readonly wrong: string[] = [];
  private readonly visitor: Visitor;

  constructor(visitor: Visitor) {
    this.visitor = visitor;
  }

  /** One post. Whether it was answered with a receipt for each; a cut connection and a busy book are no answer. */
  async post(url: string, drafts: readonly Draft[]): Promise<boolean> {
    for (const { id } of drafts) this.sent.add(id);
    try {
      const response = await fetch(`${url}/api/entries?sent=${Date.now()}`, {
        method: 'POST',
        headers: { ...this.visitor.headers, origin: url },
        body: JSON.stringify(drafts),
        signal: AbortSignal.timeout(60_000),
      });
      const { receipts } = (await response.json()) as { receipts?: Receipt[] };
      for (const receipt of receipts ?? []) this.take(receipt);
      return receipts !== undefined;
    } catch {
      return false;
    }
  }

  /** Sends until each was told, as an outbox does. @throws Error when that takes longer than `withinMs` */
  async postUntilTold(url: string, drafts: readonly Draft[], withinMs = 120_000): Promise<void> {
    const end = Date.now() + withinMs;
    while (!(await this.post(url, drafts))) {
      if (Date.now() > end) throw new Error(`not told within ${withinMs} ms`);
      await sleep(100);
    }
  }

  private take({ id, seq, problem }: Receipt): void {
    const before = this.told.get(id);
    if (seq === null) this.wrong.push(`${id} refused: ${problem?.problem}`);
    else if (before !== undefined && before !== seq) this.wrong.push(`${id} is ${seq}, was ${before}`);
    else this.told.set(id, seq);
  }
}
