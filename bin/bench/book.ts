import { readFileSync } from 'node:fs';
import { openBook } from '#db/connect.ts';
import { ownerOn } from '#db/embedded/attendance.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { silent } from '#db/say.ts';
import type { Draft } from '#shared/entries/entry.ts';
import { buildIfChanged } from '../build.ts';
import { type KitchenServer, startKitchen } from '../kitchen-server.ts';
import { say } from '../say.ts';
import { airReading, firstVisit, type Visitor } from '../visitor.ts';
import { type BareScript, bareScript } from './bare-script.ts';
import { postTo } from './post-to.ts';
import { quantile, type Side } from './ratio.ts';

const warmSingles = 1000; // until the compilers of both have seen enough: a kitchen's server runs for months
const warmBatches = 10;
const singles = 300;
const turns = 40; // of eight at once and of a hundred at once
const ofABatch = 100;
const phones = 200;
const ofARound = 8;
const atOnce = 8; // people who log at the same moment in a large kitchen
const aMonth = 30;
const aDay = 2880; // looks half a minute apart

/** Every look a minute before the one before it, none like another. */
function drafts(visitor: Visitor, from: number, count: number): Draft[] {
  return Array.from({ length: count }, (_, i) => {
    const draft = airReading(visitor, (from + i) % 1000);
    const at = new Date(Date.now() - 1000 - (from + i) * 30_000).toISOString();
    return { ...draft, at, entered_at: at };
  });
}

async function post(url: string, visitor: Visitor, sent: readonly Draft[]): Promise<void> {
  const body = JSON.stringify(sent);
  const { status, text } = await postTo(`${url}/api/entries`, body, visitor.headers);
  const answer = JSON.parse(text) as { receipts?: { seq: number | null }[] };
  const taken = answer.receipts?.filter(({ seq }) => seq !== null).length ?? 0;
  if (status !== 200 || taken !== sent.length)
    throw new Error(`bench: a post was refused: ${status} ${text.slice(0, 400)}`);
}

/** An answer over HTTP with no question to the database behind it: what a device that nobody let in is told. */
async function knock(url: string): Promise<void> {
  const { status } = await postTo(`${url}/api/entries`, '[]', { origin: url });
  if (status !== 401) throw new Error(`bench: an unknown device was answered ${status}`);
}

async function timed(call: () => Promise<void>): Promise<number> {
  const from = performance.now();
  await call();
  return performance.now() - from;
}

/** Rows a second, one way after the other in turns, from the same number of rows. */
async function throughput(
  ways: Record<string, () => Promise<void>>,
  turns: number,
  rows: number,
): Promise<Record<string, number>> {
  const took: Record<string, number> = {};
  for (let turn = 0; turn < turns; turn += 1)
    for (const [name, way] of Object.entries(ways)) took[name] = (took[name] ?? 0) + (await timed(way));
  return Object.fromEntries(Object.entries(took).map(([name, ms]) => [name, ((turns * rows) / ms) * 1000]));
}

function rateLine(what: string, rates: Record<string, number>): string {
  const { api = Number.NaN, script = Number.NaN, ...others } = rates;
  const beside = Object.entries(others).map(([name, rate]) => `, ${name} ${rate.toFixed(0)}`);
  const verdict = api / script >= 0.7 ? 'within the goal' : 'UNDER the goal';
  return `${what}: ${(api / script).toFixed(2)}× of a bare script’s throughput (goal ≥ 0.7×, ${verdict}); rows a second: API ${api.toFixed(0)}, script ${script.toFixed(0)}${beside.join('')}`;
}

/** The most of the script's throughput that a post over HTTP can reach, were the script's own transaction behind it. */
function ceilingLine({ script = Number.NaN, answer = Number.NaN }: Record<string, number>): string {
  const most = 1 / script / (1 / script + 1 / answer);
  return `an answer over HTTP with nothing behind it: ${answer.toFixed(0)} a second; with the script’s own transaction behind it one client would reach ${most.toFixed(2)}×`;
}

/** 200 phones at the same second; every acknowledged entry is looked for in the book afterwards. */
async function phonesLine(kitchen: KitchenServer, visitor: Visitor, from: number): Promise<string> {
  const rounds = Array.from({ length: phones }, (_, n) => drafts(visitor, from + n * ofARound, ofARound));
  const side: Side = { name: 'a round', values: [] };
  await Promise.all(
    rounds.map(async (round) => {
      side.values.push(await timed(() => post(kitchen.url, visitor, round)));
    }),
  );
  const db = await openBook(kitchen.environment);
  const ids = rounds.flat().map(({ id }) => id);
  const [found] = await db.sql<{ count: number }[]>`
    select count(*)::int as count from ledger where id = any(${ids}::uuid[])`;
  await db.close();
  const lost = ids.length - (found?.count ?? 0);
  return `${phones} phones send a round of ${ofARound} at the same second: ${lost} of ${ids.length} acknowledged entries lost; p50 ${quantile(side.values, 0.5).toFixed(0)} ms, p99 ${quantile(side.values, 0.99).toFixed(0)} ms`;
}

const procFile = (pid: string, name: string): string => readFileSync(`/proc/${pid}/${name}`, 'utf8');

/** Memory in MB of a process and of those that it started, as Linux tells it; null elsewhere. */
function memoryOf(pid: string): number | null {
  try {
    const kb = Number(/VmRSS:\s+(\d+)/.exec(procFile(pid, 'status'))?.[1] ?? 0);
    const children = procFile(pid, `task/${pid}/children`)
      .split(' ')
      .filter((child) => child !== '');
    return children.reduce((sum, child) => sum + (memoryOf(child) ?? 0), kb / 1024);
  } catch {
    return null;
  }
}

/**
 * A month of days, each a few rounds and a look at the first page: what the server's memory does meanwhile. Each day's
 * looks lie on their own day, all before what the first page shows: its night grows no longer while memory is watched.
 */
async function memoryLine(kitchen: KitchenServer, visitor: Visitor): Promise<string> {
  const values: number[] = [];
  for (let day = 0; day < aMonth; day += 1) {
    const from = (aMonth - day + 10) * aDay;
    for (let round = 0; round < 8; round += 1)
      await post(kitchen.url, visitor, drafts(visitor, from + round * ofARound, ofARound));
    await fetch(kitchen.url, { headers: visitor.headers }).then((page) => page.arrayBuffer());
    const mb = memoryOf(String(kitchen.process.pid));
    if (mb !== null) values.push(mb);
  }
  const [warm, last] = [values[Math.floor(aMonth / 3)], values.at(-1)];
  if (warm === undefined || last === undefined)
    return 'memory over a simulated month: not told by this system';
  return `memory over a simulated month: ${(last / warm).toFixed(2)}× of what it was after ten days (${warm.toFixed(0)} MB, then ${last.toFixed(0)} MB; first day ${values[0]?.toFixed(0)} MB)`;
}

async function appending(kitchen: KitchenServer, visitor: Visitor, script: BareScript): Promise<string[]> {
  let next = 0;
  const fresh = (count: number): Draft[] => {
    next += count;
    return drafts(visitor, next - count, count);
  };
  const ways = (count: number) => ({
    api: () => post(kitchen.url, visitor, fresh(count)),
    script: () => script.append(fresh(count)),
    'raw insert': () => script.insert(fresh(count)),
  });
  const alone = { ...ways(1), answer: () => knock(kitchen.url) };
  await throughput(alone, warmSingles / 2, 1);
  await script.settle();
  await throughput(alone, warmSingles / 2, 1);
  const one = await throughput(alone, singles, 1);
  const beside = (way: () => Promise<void>) => async () => {
    await Promise.all(Array.from({ length: atOnce }, way));
  };
  const { api, script: scripts, 'raw insert': raw } = ways(1);
  const eight = await throughput(
    { api: beside(api), script: beside(scripts), 'raw insert': beside(raw) },
    turns,
    atOnce,
  );
  const inBatches = { ...ways(ofABatch), copy: () => script.copy(fresh(ofABatch)) };
  await throughput(inBatches, warmBatches, ofABatch);
  const many = await throughput(inBatches, turns, ofABatch);
  say('  200 phones …');
  const sent = await phonesLine(kitchen, visitor, next);
  say('  a month of days …');
  return [
    rateLine('appending one entry by the API', one),
    ceilingLine(one),
    rateLine(`appending one entry by each of ${atOnce} clients at once`, eight),
    rateLine(`appending ${ofABatch} entries at once by the API`, many),
    sent,
    await memoryLine(kitchen, visitor),
  ];
}

/** The book on real PostgreSQL: appending over HTTP against a bare script on the same server, load and memory. */
export async function book(): Promise<string[]> {
  await buildIfChanged();
  const kitchen = await startKitchen();
  try {
    const visitor = await firstVisit(kitchen.url);
    const { sockets } = settlePlace(kitchen.environment, silent);
    const script = await bareScript(ownerOn(sockets, 'holdproof'), atOnce);
    try {
      return await appending(kitchen, visitor, script);
    } finally {
      await script.close();
    }
  } finally {
    await kitchen.stop();
  }
}
