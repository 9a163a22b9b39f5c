import { createHash, type Hash } from 'node:crypto';
import { linesOf } from '#db/backup/lines.ts';
import { leastKept } from '#lib/limits/keeping.ts';
import { lastingKinds } from '#shared/entries/entry.ts';
import { erasedSha256 } from '#shared/envelope.ts';
import { type EntryRow, type Misfit, misfitAt } from './misfit.ts';

/** What an entry of the kind `erasure` says was erased, by whom and when: a walk that came past it says so. */
export type Told = {
  seq: number;
  at: string; // when it came into the book
  by: string; // the name of who wrote it, or their id
  from: string; // operating days
  to: string;
  first: number; // entries of the chain
  last: number;
  count: number;
  digest: string;
  sheets: string[]; // SHA-256 of the signed texts that went
};

type Said = Omit<Told, 'by'> & { ranges: [number, number][]; received: number; count: number };
type Going = { hash: Hash; count: number };

const dayMs = 86_400_000;
const lasting: ReadonlySet<string> = new Set(lastingKinds);

/**
 * The erasures of one site's chain. Found before the walk, for they stand behind what they speak of; whether they
 * themselves fit is seen when the walk comes to them.
 */
export class Erasures {
  readonly told: Told[] = [];
  private readonly said: Said[];
  private readonly ranges: { first: number; last: number; by: Said }[];
  private passed = 0; // ranges that lie before the walk
  private readonly going = new Map<number, Going>();
  private readonly names = new Map<string, string>();

  constructor(rows: readonly Pick<EntryRow, 'seq' | 'body' | 'received_at'>[]) {
    this.said = rows.flatMap((row) => saidIn(row) ?? []);
    this.ranges = this.said
      .flatMap((by) => by.ranges.map(([first, last]) => ({ first, last, by })))
      .sort((a, b) => a.first - b.first);
  }

  /** For each row in its order, one that fits the chain: what it has to do with an erasure, and does not fit. */
  misfitOf(row: EntryRow): Misfit | null {
    const seq = Number(row.seq);
    const sha256 = erasedSha256(row.body);
    const by = this.sayingOf(seq);
    if (sha256 === null) {
      if (by !== undefined) return misfitAt(row)('still_there', { by: by.seq });
      if (row.kind === 'person') this.remember(row);
      return row.kind === 'erasure' ? this.close(row) : null;
    }
    if (by === undefined) return misfitAt(row)('erased_unsaid');
    if (lasting.has(row.kind)) return misfitAt(row)('erased_lasting', { by: by.seq, kind: row.kind });
    if (mayGoFrom(row.received_at) > by.received) {
      return misfitAt(row)('erased_early', { by: by.seq, at: by.at, years: leastKept.years });
    }
    const going = this.going.get(by.seq) ?? { hash: createHash('sha256'), count: 0 };
    going.hash.update(`${seq} ${row.hash} ${sha256}\n`);
    going.count += 1;
    this.going.set(by.seq, going);
    return null;
  }

  /** The erasure behind an entry that names it; rows come in order, so the ranges are gone through once. */
  private sayingOf(seq: number): Said | undefined {
    while ((this.ranges[this.passed]?.last ?? seq) < seq) this.passed += 1;
    const next = this.ranges[this.passed];
    return next !== undefined && next.first <= seq && seq < next.by.seq ? next.by : undefined;
  }

  private remember(row: EntryRow): void {
    const { person, name } = JSON.parse(row.body) as { person: string; name: string };
    this.names.set(person.toLowerCase(), name);
  }

  /** The walk is at the erasure itself: everything that it speaks of was seen. */
  private close(row: EntryRow): Misfit | null {
    const one = this.said.find(({ seq }) => seq === Number(row.seq));
    if (one === undefined) return misfitAt(row)('erasure_unread');
    const going = this.going.get(one.seq);
    const found = { count: going?.count ?? 0, digest: going?.hash.digest('hex') ?? '–' };
    if (found.count !== one.count || found.digest !== one.digest) {
      const expected = { expected: one.count, expected_digest: one.digest };
      return misfitAt(row)('erasure_differs', {
        found: found.count,
        found_digest: found.digest,
        ...expected,
      });
    }
    const { ranges: _, received: __, ...said } = one;
    this.told.push({ ...said, by: this.names.get(row.by) ?? row.by });
    return null;
  }
}

/** The earliest moment at which an entry received then may have gone; a day less, for clocks that change. */
function mayGoFrom(receivedAt: string): number {
  const date = new Date(receivedAt);
  date.setUTCFullYear(date.getUTCFullYear() + leastKept.years);
  return date.getTime() - dayMs;
}

/** Null where the text is not that of an erasure: the walk says so when it comes to the entry. */
function saidIn(row: Pick<EntryRow, 'seq' | 'body' | 'received_at'>): Said | null {
  try {
    const body = JSON.parse(row.body) as Omit<Said, 'sheets'> & { sheets: { hash: string }[] };
    const { from, to, ranges, count, digest } = body;
    const first = ranges[0]?.[0];
    const last = ranges.at(-1)?.[1];
    if (first === undefined || last === undefined) return null;
    const sheets = body.sheets.map(({ hash }) => hash);
    const at = row.received_at;
    const numbers = { seq: Number(row.seq), first, last, count };
    return { ...numbers, at, from, to, digest, sheets, ranges, received: Date.parse(at) };
  } catch {
    return null;
  }
}

/** The erasures in a backup, by site: its lines are looked through once before they are walked. */
export async function erasuresInFile(file: string): Promise<Map<string, EntryRow[]>> {
  const found = new Map<string, EntryRow[]>();
  for await (const line of linesOf(file)) {
    if (!line.includes('"kind":"erasure"')) continue; // inside a text its quotes would be escaped
    try {
      const { row } = JSON.parse(line) as { row: EntryRow };
      found.set(row.site, [...(found.get(row.site) ?? []), row]);
    } catch {
      // The walk says that this line is damaged.
    }
  }
  return found;
}
