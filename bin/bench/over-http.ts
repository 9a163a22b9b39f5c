import { buildIfChanged } from '../build.ts';
import { startKitchen } from '../kitchen-server.ts';
import { firstVisit, type Visitor } from '../visitor.ts';
import { bareDatabase } from './bare-database.ts';
import { startBare } from './bare-server.ts';
import { ratioLine } from './ratio.ts';
import { saving } from './saving.ts';
import { scriptKb } from './script-size.ts';

async function savingLine(urls: { book: string; bare: string }, visitor: Visitor): Promise<string> {
  const { ours, bare } = await saving(urls, visitor);
  const what = 'saving a reading over HTTP / a bare route that inserts a row';
  return ratioLine(what, ours, bare, 0.95, 1.5, 'ms');
}

async function scriptLine(urls: { book: string; bare: string }, visitor: Visitor): Promise<string> {
  const round = { name: 'round', values: [await scriptKb(`${urls.book}/round`, visitor.headers)] };
  const empty = { name: 'empty page', values: [await scriptKb(urls.bare)] };
  return ratioLine('script of the round before the first tap / an empty page', round, empty, 0.5, 1.3, 'kB');
}

/** A kitchen and a bare application on one PostgreSQL: what saving a figure costs, and what a phone loads first. */
export async function overHttp(): Promise<string[]> {
  await buildIfChanged();
  const kitchen = await startKitchen();
  const database = await bareDatabase(kitchen.environment);
  const plain = await startBare(database.options);
  const urls = { book: kitchen.url, bare: plain.url };
  try {
    const visitor = await firstVisit(kitchen.url);
    return [await savingLine(urls, visitor), await scriptLine(urls, visitor)];
  } finally {
    plain.stop();
    await database.leave();
    await kitchen.stop();
  }
}
