import { createHash } from 'node:crypto';
import { format, parseISO, subYears } from 'date-fns';
import { sql } from 'drizzle-orm';
import type { Db } from '#db/connect.ts';
import { checksAround, equipmentDeviationsMs, latest, loadKinds } from '#db/load.ts';
import { leastKept } from '#lib/limits/keeping.ts';
import { dayFrame, dayNow } from '#lib/sheet/day-frame.ts';
import { lastingKinds } from '#shared/entries/entry.ts';
import { dayBounds, dayOf } from '#shared/time.ts';
import { type PlanRow, staying } from './connections.ts';
import { EraseRefused } from './refused.ts';

export type Range = [from: number, to: number];

/** What would be erased, and what of the same time stays. Days are operating days. */
export type Plan = {
  site: string;
  before: string;
  beforeMs: number; // the beginning of that day
  years: number; // how long records are kept here, and by which rule (null = the least)
  because: string | null;
  ranges: Range[];
  batches: string[];
  count: number;
  bytes: number;
  digest: string;
  days: number;
  from: string;
  to: string;
  sheets: { day: string; hash: string }[];
  /** Of the entries before that day: bound to newer ones, and of kinds that are never erased. */
  stays: { bound: number; lasting: number };
};

const rowsAtOnce = 20_000;
const lasting: ReadonlySet<string> = new Set(lastingKinds);

/** How long this site keeps its records: what was last set, never less than the least. */
export async function yearsKept(db: Db, site: string): Promise<{ years: number; because: string | null }> {
  const set = (await latest(db, site, 'retention'))?.body;
  return set !== undefined && set.years >= leastKept.years ? set : { years: leastKept.years, because: null };
}

/**
 * Works out what goes: entries of operating days before `before`, that came into the book longer ago than records
 * are kept, and to which nothing is bound that stays.
 * @param before an operating day, the first that stays
 * @param nowMs the moment of asking
 * @throws EraseRefused `no_kitchen`, `too_young`, `nothing_there`
 */
export async function planErasure(db: Db, site: string, before: string, nowMs: number): Promise<Plan> {
  const sites = await loadKinds(db, site, ['site']);
  const today = dayNow(sites, nowMs);
  const frame = dayFrame(sites, before);
  if (today === null || frame === null) throw new EraseRefused('no_kitchen');
  const { years, because } = await yearsKept(db, site);
  const latestDay = format(subYears(parseISO(today), years), 'yyyy-MM-dd');
  const limit = dayFrame(sites, latestDay)?.from ?? 0;
  if (before > latestDay) throw new EraseRefused('too_young', { before, latest: latestDay, years });
  const rows = await rowsOf(db, site);
  const old = rows.filter(
    ({ kind, atMs, day, receivedMs }) =>
      (kind === 'signature' ? (day ?? before) < before : atMs < frame.from) && receivedMs < limit,
  );
  const mayGo = new Set(old.filter(({ kind }) => !lasting.has(kind)).map(({ seq }) => seq));
  const seeds = [...rows.filter(({ seq }) => !mayGo.has(seq)), ...lastOnes(old, frame.from)];
  const kept = staying(rows, seeds);
  const free = old.filter(({ seq }) => !kept.has(seq));
  const going = withoutLoneSignatures(free, rows);
  const goes = new Set(going.map(({ seq }) => seq));
  if (going.length === 0) throw new EraseRefused('nothing_there', { before });
  const { day_starts: dayStarts, zone } = frame.site.body;
  return {
    ...{ site, before, beforeMs: frame.from, years, because },
    ranges: rangesOf(going.map(({ seq }) => seq)),
    batches: [
      ...new Set(going.flatMap((row) => (isBatch(row) && row.subject !== null ? [row.subject] : []))),
    ],
    ...(await measured(db, site, going)),
    ...daysOf(going, dayStarts, zone),
    sheets: sheetsOf(
      going,
      rows.filter(({ kind, seq }) => kind === 'signature' && !goes.has(seq)),
    ),
    stays: { bound: mayGo.size - going.length, lasting: old.length - mayGo.size },
  };
}

/** Where everything else of its day stays, its signature stays over it; a day of which some goes is signed no more. */
function withoutLoneSignatures(free: readonly PlanRow[], rows: readonly PlanRow[]): PlanRow[] {
  const goes = new Set(free.map(({ seq }) => seq));
  const events = rows.filter(({ kind }) => kind !== 'signature' && !lasting.has(kind));
  const timesOf = (some: readonly PlanRow[]) => some.map(({ atMs }) => atMs).sort((a, b) => a - b);
  const gone = timesOf(events.filter(({ seq }) => goes.has(seq)));
  const left = timesOf(events.filter(({ seq }) => !goes.has(seq)));
  return free.filter(({ kind, body }) => {
    if (kind !== 'signature' || body === null) return true;
    const { from, to } = JSON.parse(body) as { from: string; to: string };
    const has = (times: number[]) => hasBetween(times, Date.parse(from), Date.parse(to));
    return has(gone) || !has(left);
  });
}

/** Whether one of these times, in order, lies from `from` to before `end`. */
function hasBetween(times: readonly number[], from: number, end: number): boolean {
  let [low, high] = [0, times.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((times[middle] ?? 0) < from) low = middle + 1;
    else high = middle;
  }
  return (times[low] ?? Number.POSITIVE_INFINITY) < end;
}

const isBatch = ({ kind }: PlanRow): boolean => kind === 'batch' || kind === 'step';

/** All entries of a site whose text is there, in the order of the chain. */
async function rowsOf(db: Db, site: string): Promise<PlanRow[]> {
  const rows: PlanRow[] = [];
  for (let after = 0; ; ) {
    const slice = (await db.drizzle.execute(sql`
      select seq::float8 as seq, id, kind, at_ms::float8 as "atMs", received_at, subject, target, day,
        case when kind in ('batch', 'signature') then body end as body, body like 'sha256:%' as erased
      from ledger where site = ${site} and seq > ${after} order by seq limit ${rowsAtOnce}
    `)) as unknown as (Omit<PlanRow, 'receivedMs'> & { received_at: string; erased: boolean })[];
    for (const { received_at, erased, ...row } of slice) {
      if (!erased) rows.push({ ...row, receivedMs: Date.parse(received_at) });
    }
    if (slice.length < rowsAtOnce) return rows;
    after = slice.at(-1)?.seq ?? after;
  }
}

/** What the first days that stay are read with: the last checks of a thermometer, the last word about a cabinet. */
function lastOnes(old: readonly PlanRow[], beforeMs: number): PlanRow[] {
  const made = new Set(old.filter(isBatch).map(({ subject }) => subject));
  const ofThings = old.filter(
    ({ kind, subject }) =>
      ['probe_check', 'equipment_off', 'equipment_on'].includes(kind) ||
      (kind === 'reading' && subject !== null && !made.has(subject)),
  );
  const groups = Map.groupBy(ofThings, ({ kind, subject }) => `${kind} ${subject}`);
  const last = [...groups.values()].flatMap((group) =>
    group.sort((a, b) => a.atMs - b.atMs || a.seq - b.seq).slice(-checksAround),
  );
  const loose = old.filter(
    ({ kind, subject, atMs }) =>
      kind === 'deviation' && subject === null && atMs >= beforeMs - equipmentDeviationsMs,
  );
  return [...last, ...loose];
}

function rangesOf(seqs: readonly number[]): Range[] {
  const ranges: Range[] = [];
  for (const seq of seqs) {
    const last = ranges.at(-1);
    if (last !== undefined && last[1] === seq - 1) last[1] = seq;
    else ranges.push([seq, seq]);
  }
  return ranges;
}

/** Number, hash and the SHA-256 of the body, line by line: what shared/entries/erasure.ts says that the digest is. */
async function measured(
  db: Db,
  site: string,
  going: readonly PlanRow[],
): Promise<Pick<Plan, 'count' | 'bytes' | 'digest'>> {
  const digest = createHash('sha256');
  let bytes = 0;
  for (let n = 0; n < going.length; n += rowsAtOnce) {
    const seqs = going.slice(n, n + rowsAtOnce).map(({ seq }) => seq);
    const slice = (await db.drizzle.execute(sql`
      select seq, hash, encode(sha256(convert_to(body, 'UTF8')), 'hex') as body_sha256, octet_length(body) as bytes
      from ledger where site = ${site} and seq = any(${`{${seqs.join(',')}}`}::bigint[]) order by seq
    `)) as unknown as { seq: string; hash: string; body_sha256: string; bytes: number }[];
    for (const row of slice) {
      digest.update(`${row.seq} ${row.hash} ${row.body_sha256}\n`);
      bytes += row.bytes;
    }
  }
  return { count: going.length, bytes, digest: digest.digest('hex') };
}

function daysOf(going: readonly PlanRow[], dayStarts: string, zone: string) {
  const signed = going.flatMap(({ kind, day }) => (kind === 'signature' && day !== null ? [day] : []));
  const days = new Set(signed); // a signature is written after its day
  const times = going.flatMap(({ kind, atMs }) => (kind === 'signature' ? [] : [atMs]));
  let end = Number.NEGATIVE_INFINITY;
  for (const atMs of times.sort((a, b) => a - b)) {
    if (atMs < end) continue;
    const day = dayOf(atMs, dayStarts, zone);
    end = dayBounds(day, dayStarts, zone).end;
    days.add(day);
  }
  const inOrder = [...days].sort();
  return { days: days.size, from: inOrder[0] ?? '', to: inOrder.at(-1) ?? '' };
}

/** The signed texts that go: those under which no signature stays. */
function sheetsOf(going: readonly PlanRow[], kept: readonly PlanRow[]): Plan['sheets'] {
  const hashes = (rows: readonly PlanRow[]) =>
    rows.flatMap(({ kind, day, body }) =>
      kind === 'signature' && body !== null
        ? [{ day: day ?? '', hash: (JSON.parse(body) as { hash: string }).hash }]
        : [],
    );
  const stays = new Set(hashes(kept).map(({ hash }) => hash));
  const all = new Map(hashes(going).map((sheet) => [sheet.hash, sheet]));
  return [...all.values()].filter(({ hash }) => !stays.has(hash));
}
