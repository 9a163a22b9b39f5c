import { type AnyColumn, and, desc, eq, gte, inArray, isNull, lte, or, type SQL, sql } from 'drizzle-orm';
import { type Entry, type EntryOf, type Kind, setUpKinds } from '#shared/entries/entry.ts';
import type { Db } from './connect.ts';
import { entriesOf } from './entry-of.ts';
import { isErased } from './erased.ts';
import { batchLife, head, ledger } from './schema.ts';

type Row = typeof ledger.$inferSelect;

/** From and to, both included, in ms since 1970. */
export type Window = { fromMs: number; toMs: number };

const dayMs = 86_400_000;
/** Deviations without food stay in sight that long before the window, whether or not anything was done. */
export const equipmentDeviationsMs = 60 * dayMs;

/** What an entry may be, beside what its window says: kinds that say who may do what are loaded where asked. */
const perEquipment: Kind[] = ['equipment_off', 'equipment_on', 'reading'];

/**
 * The entries that a fold needs to tell a window of time, in (at, seq) order:
 * all set-up; everything observed in the window; everything of each batch that lived in it or has an entry in it,
 * and of the batches from which those were made; each probe's last checks before and first checks after; what each
 * piece of equipment was last known to be; signatures of its days; and what refers to any of these (amendments,
 * decisions, corrective actions), however late it was written.
 *
 * Each part is asked by an index, so the work follows what is loaded and not the length of the history.
 */
export async function loadEntries(db: Db, site: string, window: Window): Promise<Entry[]> {
  const shelf = new Shelf(db, site);
  await Promise.all([
    shelf.take(inArray(ledger.kind, [...setUpKinds])),
    shelf.take(and(gte(ledger.atMs, window.fromMs), lte(ledger.atMs, window.toMs))),
    shelf.takeSignatures(window),
    shelf.takeEquipmentDeviations(window),
  ]);
  await shelf.takeBatches(await livesIn(db, site, window));
  await shelf.takeAround('probe', ['probe_check'], window, 'both');
  await shelf.takeAround('equipment', perEquipment, window, 'before');
  await shelf.close();
  return shelf.entries();
}

/** Every entry of a site, in (at, seq) order. Grows with the history: for exports and tests, not for screens. */
export async function loadAll(db: Db, site: string): Promise<Entry[]> {
  const rows = await db.drizzle.select().from(ledger).where(eq(ledger.site, site));
  return sorted(rows);
}

/** All entries of some kinds, in (at, seq) order. */
export async function loadKinds<K extends Kind>(
  db: Db,
  site: string,
  kinds: readonly K[],
): Promise<EntryOf<K>[]> {
  const rows = await db.drizzle
    .select()
    .from(ledger)
    .where(and(eq(ledger.site, site), inArray(ledger.kind, [...kinds])));
  return sorted(rows) as EntryOf<Kind>[] as EntryOf<K>[];
}

/** The last entry of a kind by (at, seq), as written; null = none yet. */
export async function latest<K extends Kind>(db: Db, site: string, kind: K): Promise<EntryOf<K> | null> {
  const [row] = await db.drizzle
    .select()
    .from(ledger)
    .where(and(eq(ledger.site, site), eq(ledger.kind, kind)))
    .orderBy(desc(ledger.atMs), desc(ledger.seq))
    .limit(1);
  const [entry] = row === undefined ? [] : entriesOf([row]);
  return entry === undefined ? null : (entry as EntryOf<Kind> as EntryOf<K>);
}

/** The sites in this book, oldest first, each with the end of its chain. */
export async function listSites(db: Db): Promise<{ site: string; seq: number; hash: string }[]> {
  return db.drizzle.select().from(head).orderBy(head.site); // UUIDv7: by the time at which they were made
}

/** The end of a site's chain; null = no such site. */
export async function headOf(db: Db, site: string): Promise<{ seq: number; hash: string } | null> {
  const [row] = await db.drizzle
    .select({ seq: head.seq, hash: head.hash })
    .from(head)
    .where(eq(head.site, site));
  return row ?? null;
}

const sorted = (rows: Row[]): Entry[] => entriesOf(rows.sort((a, b) => a.atMs - b.atMs || a.seq - b.seq));

async function livesIn(db: Db, site: string, { fromMs, toMs }: Window): Promise<string[]> {
  const rows = await db.drizzle
    .select({ batch: batchLife.batch })
    .from(batchLife)
    .where(
      and(
        eq(batchLife.site, site),
        or(isNull(batchLife.toMs), gte(batchLife.toMs, fromMs)),
        lte(batchLife.fromMs, toMs),
      ),
    );
  return rows.map(({ batch }) => batch);
}

/** The rows gathered so far, each once; every `take` asks one index. */
class Shelf {
  private readonly rows = new Map<string, Row>();
  private readonly batches = new Set<string>();
  private readonly db: Db;
  private readonly site: string;

  constructor(db: Db, site: string) {
    this.db = db;
    this.site = site;
  }

  entries(): Entry[] {
    return sorted([...this.rows.values()]);
  }

  /** Adds what the condition finds; returns only what was not there before. */
  async take(condition: SQL | undefined): Promise<Row[]> {
    const found = await this.db.drizzle
      .select()
      .from(ledger)
      .where(and(eq(ledger.site, this.site), condition));
    return this.keep(found);
  }

  private keep(found: Row[]): Row[] {
    const fresh = found.filter((row) => !this.rows.has(row.id) && !isErased(row));
    for (const row of fresh) this.rows.set(row.id, row);
    return fresh;
  }

  async takeSignatures({ fromMs, toMs }: Window): Promise<void> {
    // A day on the kitchen's wall is at most a day away from the same date in UTC.
    const date = (ms: number) => new Date(ms).toISOString().slice(0, 10);
    await this.take(and(gte(ledger.day, date(fromMs - dayMs)), lte(ledger.day, date(toMs + dayMs))));
  }

  async takeEquipmentDeviations({ fromMs, toMs }: Window): Promise<void> {
    await this.take(
      and(
        eq(ledger.kind, 'deviation'),
        isNull(ledger.subject),
        gte(ledger.atMs, fromMs - equipmentDeviationsMs),
        lte(ledger.atMs, toMs),
      ),
    );
  }

  /** Everything of these batches, of those met in the rows so far, and of those from which they were made. */
  async takeBatches(batches: Iterable<string>): Promise<void> {
    let next = [...new Set([...batches, ...batchesIn(this.rows.values())])];
    while (next.length > 0) {
      for (const batch of next) this.batches.add(batch);
      const fresh = await this.take(oneOf(ledger.subject, next));
      next = batchesIn(fresh).filter((batch) => !this.batches.has(batch));
    }
  }

  /** For each probe or piece of equipment in the set-up: its nearest entries of some kinds outside the window. */
  async takeAround(
    thing: 'probe' | 'equipment',
    kinds: Kind[],
    window: Window,
    sides: 'before' | 'both',
  ): Promise<void> {
    const ids = new Set<string>();
    for (const { kind, body } of this.rows.values()) {
      if (kind === thing) ids.add(String(JSON.parse(body)[thing]).toLowerCase());
    }
    if (ids.size === 0) return;
    await this.take(this.nearest([...ids], kinds, sql`at_ms <= ${window.fromMs}`, sql`desc`));
    if (sides === 'both')
      await this.take(this.nearest([...ids], kinds, sql`at_ms >= ${window.toMs}`, sql`asc`));
  }

  /** For each thing and each kind the nearest few on one side: one walk into the index each, in one statement. */
  private nearest(ids: string[], kinds: Kind[], side: SQL, order: SQL): SQL {
    return sql`${ledger.seq} in (
      select near.seq from unnest(${listOf(ids)}::uuid[]) as thing, unnest(${listOf(kinds)}::text[]) as said,
        lateral (
          select seq from ledger
          where site = ${this.site} and subject = thing and kind = said and ${side}
          order by at_ms ${order}, seq ${order} limit ${checksAround}
        ) as near)`;
  }

  /** What refers to the rows, what refers to that, and what those that were observed in the window correct. */
  async close(): Promise<void> {
    let ids = [...this.rows.keys()];
    while (ids.length > 0) {
      const fresh = await this.take(oneOf(ledger.target, ids));
      const corrected = await this.takeTargets();
      await this.takeBatches(batchesIn([...fresh, ...corrected]).filter((batch) => !this.batches.has(batch)));
      ids = [...fresh, ...corrected].map(({ id }) => id);
    }
  }

  private async takeTargets(): Promise<Row[]> {
    const missing = [...this.rows.values()]
      .map(({ target }) => target)
      .filter((target): target is string => target !== null && !this.rows.has(target));
    return missing.length === 0 ? [] : this.take(oneOf(ledger.id, missing));
  }
}

/** A list as one parameter: ids and kinds hold nothing that would have to be quoted. */
const listOf = (items: readonly string[]): string => `{${items.join(',')}}`;

const oneOf = (column: AnyColumn, ids: string[]): SQL => sql`${column} = any(${listOf(ids)}::uuid[])`;

/** How many of a probe's checks before and after the window: a failed one makes readings suspect back to a kept one. */
export const checksAround = 3;

/** Kinds whose subject is a batch when there is one; of the others the subject is a probe or equipment. */
const things: ReadonlySet<string> = new Set(['probe_check', 'equipment_off', 'equipment_on']);

function batchesIn(rows: Iterable<Row>): string[] {
  const batches = new Set<string>();
  for (const { kind, subject, body } of rows) {
    if (subject === null || things.has(kind)) continue;
    const said = JSON.parse(body) as { batch?: string | null; source?: { batch: string | null }[] };
    if (kind !== 'reading' || said.batch) batches.add(subject);
    if (kind !== 'batch') continue;
    for (const { batch } of said.source ?? []) if (batch !== null) batches.add(batch.toLowerCase());
  }
  return [...batches];
}
