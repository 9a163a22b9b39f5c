import { and, eq, inArray, or, sql } from 'drizzle-orm';
import { applyAmendments } from '#lib/fold/amend.ts';
import { inOrder, ofKind } from '#lib/fold/order.ts';
import { foldSteps } from '#lib/fold/runs.ts';
import type { Entry } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import type { Db } from './connect.ts';
import { entriesOf } from './entry-of.ts';
import { batchLife, ledger } from './schema.ts';

/** From when to when (ms) a batch lived; `toMs` null = something of it may still be there. */
export type Life = { batch: string; fromMs: number; toMs: number | null };

/** Kinds that can begin a batch's life, end it or give it back. Readings never do. */
const decides: ReadonlySet<string> = new Set(['batch', 'step', 'amendment']);

/**
 * Keeps `batch_life` beside the ledger: called with what was just written, in the same transaction. The lives are
 * the fold's own answer over each batch that was touched, so the table can be thrown away and made again.
 */
export async function keepLives(within: Db, site: string, written: readonly Entry[]): Promise<void> {
  const deciding = written.filter(({ kind }) => decides.has(kind));
  const batches = await touched(within, site, deciding);
  if (batches.length > 0) await writeLives(within, site, batches);
}

/** Whether any of these can begin a batch's life, end it or give it back. */
export const touchesLives = (written: readonly Entry[]): boolean =>
  written.some(({ kind }) => decides.has(kind));

/** The batches that these entries are about; an amendment is about its target's. */
async function touched({ drizzle }: Db, site: string, entries: readonly Entry[]): Promise<string[]> {
  const batches = new Set<string>();
  const targets: string[] = [];
  for (const { kind, body } of entries) {
    if (kind === 'batch' || kind === 'step') batches.add(body.batch.toLowerCase());
    if (kind === 'amendment') targets.push(body.target);
  }
  const seen = new Set<string>();
  for (let next = targets; next.length > 0; ) {
    for (const id of next) seen.add(id);
    const rows = await drizzle
      .select({ kind: ledger.kind, subject: ledger.subject, target: ledger.target })
      .from(ledger)
      .where(and(eq(ledger.site, site), inArray(ledger.id, next)));
    next = []; // an amendment of an amendment leads on to what that one corrected
    for (const { kind, subject, target } of rows) {
      if ((kind === 'batch' || kind === 'step') && subject !== null) batches.add(subject);
      if (kind === 'amendment' && target !== null && !seen.has(target)) next.push(target);
    }
  }
  return [...batches];
}

async function writeLives(within: Db, site: string, batches: string[]): Promise<void> {
  const steps = await within.drizzle
    .select()
    .from(ledger)
    .where(
      and(
        eq(ledger.site, site),
        inArray(ledger.subject, batches),
        or(eq(ledger.kind, 'batch'), eq(ledger.kind, 'step')),
      ),
    );
  const amendments = await amendmentsOf(
    within,
    site,
    steps.map(({ id }) => id),
  );
  const entries = entriesOf([...steps, ...amendments]);
  const lives = livesOf(entries).filter(({ batch }) => batches.includes(batch));
  if (lives.length === 0) return;
  await within.drizzle
    .insert(batchLife)
    .values(lives.map((life) => ({ site, ...life })))
    .onConflictDoUpdate({
      target: [batchLife.site, batchLife.batch],
      set: { fromMs: sql`excluded.from_ms`, toMs: sql`excluded.to_ms` },
    });
}

/** Amendments of these entries, and amendments of those. */
async function amendmentsOf(
  { drizzle }: Db,
  site: string,
  ids: string[],
): Promise<(typeof ledger.$inferSelect)[]> {
  const all = new Map<string, typeof ledger.$inferSelect>();
  for (let next = ids; next.length > 0; ) {
    const rows = await drizzle
      .select()
      .from(ledger)
      .where(and(eq(ledger.site, site), inArray(ledger.target, next), eq(ledger.kind, 'amendment')));
    const fresh = rows.filter(({ id }) => !all.has(id));
    for (const row of fresh) all.set(row.id, row);
    next = fresh.map(({ id }) => id);
  }
  return [...all.values()];
}

/**
 * The lives that a set of entries tells: begun with the first entry of the batch, ended with the last when the
 * fold finds every piece gone. Times before an amendment count too, so a life is never shorter than either tells.
 */
export function livesOf(entries: readonly Entry[]): Life[] {
  const now = applyAmendments(inOrder(entries), Number.POSITIVE_INFINITY).entries;
  const written = Map.groupBy(
    entries.filter((entry) => entry.kind === 'batch' || entry.kind === 'step'),
    ({ body }) => body.batch.toLowerCase(),
  );
  const standing = Map.groupBy(
    inOrder(now).filter((entry) => entry.kind === 'batch' || entry.kind === 'step'),
    ({ body }) => body.batch.toLowerCase(),
  );
  return [...written].map(([batch, all]) => {
    const mine = standing.get(batch) ?? [];
    const times = [...all, ...mine].map(({ at }) => msOf(at));
    const count = ofKind(mine, 'batch').at(-1)?.body.pieces ?? null;
    const { pieces, ends } = foldSteps(count, ofKind(mine, 'step'));
    const gone = pieces.every((piece) => ends.has(piece));
    return { batch, fromMs: Math.min(...times), toMs: gone ? Math.max(...times) : null };
  });
}
