import { and, eq, isNull, lt } from 'drizzle-orm';
import type { Db } from '#db/connect.ts';
import { loadEntries, loadKinds } from '#db/load.ts';
import { batchLife } from '#db/schema.ts';
import type { Book } from '#lib/fold/book.ts';
import { foldBook } from '#lib/fold/fold-book.ts';
import type { Entry } from '#shared/entries/entry.ts';
import { dayOf } from '#shared/time.ts';
import type { Plan } from './plan.ts';
import { EraseRefused } from './refused.ts';

type Progress = (done: number, count: number) => void;

const windowMs = 7 * 86_400_000; // a week of nights is folded at a time
const namesSaid = 5;

/**
 * What is still open from the days that would go: food that may still be there, deviations that nobody answered.
 * Asked of the fold, as of now.
 * @throws EraseRefused `open_batches`, `open_deviations`
 */
export async function refuseOpen(db: Db, plan: Plan, nowMs: number, progress: Progress): Promise<void> {
  const { site, beforeMs } = plan;
  const answers = await loadKinds(db, site, ['corrective_action', 'decision', 'signature']);
  const fold = async (fromMs: number, toMs: number): Promise<Book> => {
    const near = await loadEntries(db, site, { fromMs, toMs });
    const all = new Map([...near, ...(answers as Entry[])].map((entry) => [entry.id, entry]));
    return foldBook([...all.values()], nowMs);
  };
  const batches = await openBatches(db, site, beforeMs, fold);
  if (batches.length > 0) throw new EraseRefused('open_batches', said(batches));
  const fromMs = firstMs(plan);
  const windows = Math.max(1, Math.ceil((beforeMs - fromMs) / windowMs));
  const open: string[] = [];
  for (let n = 0; n < windows; n += 1) {
    const start = fromMs + n * windowMs;
    const end = Math.min(start + windowMs, beforeMs);
    const book = await fold(start, end - 1);
    for (const one of book.deviations) {
      if (one.state !== 'open' || one.foundAt < start || one.foundAt >= end) continue;
      const thing = one.batch === null ? null : book.batches.get(one.batch)?.name;
      open.push([thing, dayIn(book, one.foundAt)].filter(Boolean).join(', '));
    }
    progress(n + 1, windows);
  }
  if (open.length > 0) throw new EraseRefused('open_deviations', said(open));
}

/** Batches of which something may still be there. The table only says which ones to ask the fold about. */
async function openBatches(
  db: Db,
  site: string,
  beforeMs: number,
  fold: (fromMs: number, toMs: number) => Promise<Book>,
): Promise<string[]> {
  const lives = await db.drizzle
    .select()
    .from(batchLife)
    .where(and(eq(batchLife.site, site), isNull(batchLife.toMs), lt(batchLife.fromMs, beforeMs)));
  const names: string[] = [];
  for (const { batch, fromMs } of lives) {
    const book = await fold(fromMs, fromMs);
    const found = book.batches.get(batch);
    if (found?.open) names.push(`${found.name}, ${dayIn(book, found.at)}`);
  }
  return names;
}

/** Noon UTC of the first day that goes, a day earlier: before that day's beginning in every zone. */
const firstMs = ({ from }: Plan): number => Date.parse(`${from}T12:00:00Z`) - 86_400_000;

const dayIn = ({ kitchen }: Book, ms: number): string =>
  dayOf(ms, kitchen.site?.day_starts ?? '00:00', kitchen.site?.zone ?? 'UTC');

const said = (things: readonly string[]) => ({
  count: things.length,
  names: `${things.slice(0, namesSaid).join('; ')}${things.length > namesSaid ? ' …' : ''}`,
});
