import 'server-only';
import type { Db } from '#db/connect.ts';
import { setUpSince } from '#db/set-up-since.ts';
import { applyAmendments } from '#lib/fold/amend.ts';
import type { Kitchen } from '#lib/fold/book.ts';
import { foldKitchen } from '#lib/fold/kitchen.ts';
import { inOrder } from '#lib/fold/order.ts';
import type { Entry } from '#shared/entries/entry.ts';

type Kept = { seq: number; entries: Map<string, Entry>; kitchen: Kitchen };

/** The set-up in force, and the entries that say it. */
export type SetUp = Pick<Kept, 'kitchen'> & { entries: readonly Entry[] };
const kept = new WeakMap<Db, Map<string, Kept>>();

/**
 * The set-up of a site as it is now. What the chain got since the last call is read and nothing else, so that a
 * saved figure does not wait for the folding of the set-up; another server's changes are seen like our own.
 */
export const setUpOf = (db: Db, site: string): Promise<SetUp> => readUpTo(db, site, db);

const asked = new WeakMap<Db, Promise<SetUp>>();

/** The same within a transaction that holds the chain's lock: asked once, for however many posts are written in it. */
export function setUpWithin(db: Db, site: string, within: Db): Promise<SetUp> {
  const known = asked.get(within) ?? readUpTo(db, site, within);
  asked.set(within, known);
  return known;
}

async function readUpTo(db: Db, site: string, within: Db): Promise<SetUp> {
  const sites = kept.get(db) ?? new Map<string, Kept>();
  kept.set(db, sites);
  const before = sites.get(site);
  const { entries: fresh, seq } = await setUpSince(within, site, before?.seq ?? 0);
  const entries = new Map(before?.entries);
  const concerned = fresh.sort((a, b) => a.seq - b.seq).filter((entry) => keep(entries, entry));
  if (before !== undefined && concerned.length === 0) {
    before.seq = Math.max(before.seq, seq);
    return shown(before);
  }
  const now = { seq, entries, kitchen: folded([...entries.values()]) };
  sites.set(site, now);
  return shown(now);
}

const shown = ({ kitchen, entries }: Kept): SetUp => ({ kitchen, entries: [...entries.values()] });

/** The kitchen alone. */
export const kitchenOf = async (db: Db, site: string): Promise<Kitchen> => (await setUpOf(db, site)).kitchen;

/** Adds set-up, and amendments of set-up; whether it was one of these. */
function keep(entries: Map<string, Entry>, entry: Entry): boolean {
  const concerns = entry.kind !== 'amendment' || entries.has(entry.body.target);
  if (concerns) entries.set(entry.id, entry);
  return concerns;
}

/** With no clock to go by: the last word about each thing, whenever it says it was true. */
export function folded(entries: readonly Entry[]): Kitchen {
  const ever = Number.POSITIVE_INFINITY;
  return foldKitchen(applyAmendments(inOrder(entries), ever).entries, ever);
}
