import type { Db } from '#db/connect.ts';
import { fillDemo } from '#db/demo/fill.ts';
import { latest } from '#db/load.ts';
import { loadDay } from '#db/load-day.ts';
import { say } from '../say.ts';
import { layHistory, withoutIndexes } from './history.ts';
import { type OwnBooks, ownBooks } from './own-book.ts';
import { ratioLine, type Side } from './ratio.ts';

const least = 10_000;
const grown = [
  { readings: 100_000, goal: 1.3 },
  { readings: 1_000_000, goal: 1.3 },
];
const large = { readings: 10_000_000, goal: 1.6 };
const turns = 60;
const warmUp = 10;

type Filled = { db: Db; site: string; day: string; side: Side };

async function filled(books: OwnBooks, readings: number): Promise<Filled> {
  const name = `history_${readings}`;
  const db = await books.open(name);
  const { site } = await fillDemo(db, { fixed: true, now: Date.now() });
  const owner = books.owner(name);
  await withoutIndexes(owner, () => layHistory(db, site, readings));
  await owner.unsafe('vacuum analyze ledger');
  await owner.unsafe('vacuum analyze batch_life');
  await owner.end();
  const signature = await latest(db, site, 'signature');
  if (!signature) throw new Error('bench: no day of the night is signed');
  return { db, site, day: signature.body.day, side: { name: `at ${readings}`, values: [] } };
}

async function ask({ db, site, day, side }: Filled, counts: boolean): Promise<number> {
  const from = performance.now();
  const entries = await loadDay(db, site, day);
  if (counts) side.values.push(performance.now() - from);
  return entries.length;
}

/**
 * The daily sheet's query on the same night behind longer and longer histories: books of their own on one PostgreSQL,
 * asked in turns. `--large` adds ten million readings, which takes minutes and some 10 GB.
 */
export async function sheetGrowth(withLarge: boolean): Promise<string[]> {
  const books = ownBooks();
  try {
    const sizes = [{ readings: least, goal: 1 }, ...grown, ...(withLarge ? [large] : [])];
    const all: Filled[] = [];
    for (const { readings } of sizes) all.push(await filled(books, readings));
    say('  asking for the day in turns …');
    const found = new Set<number>();
    for (let turn = 0; turn < warmUp + turns; turn += 1)
      for (const book of all) found.add(await ask(book, turn >= warmUp));
    const [small, ...others] = all;
    if (small === undefined) return [];
    return others.map(({ side }, i) => {
      const { readings, goal } = sizes[i + 1] ?? large;
      const what = `the daily sheet’s query at ${readings} readings / at ${least} (${found.size === 1 ? 'the same' : 'NOT the same number of'} entries found)`;
      return ratioLine(what, side, small.side, 0.5, goal, 'ms');
    });
  } finally {
    await books.close();
  }
}
