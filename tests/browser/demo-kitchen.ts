import { type KitchenServer, startKitchen } from '#bin/kitchen-server.ts';
import { openBook } from '#db/connect.ts';
import { fillDemo } from '#db/demo/fill.ts';
import { listSites, loadAll } from '#db/load.ts';
import type { Entry, EntryOf, Kind } from '#shared/entries/entry.ts';

/** A whole Holdproof with the invented night in it, moved to now. */
export async function demoKitchen(more: Record<string, string> = {}): Promise<KitchenServer> {
  const kitchen = await startKitchen(more);
  const db = await openBook(kitchen.environment);
  await fillDemo(db, { fixed: false, now: Date.now() });
  await db.close();
  return kitchen;
}

/** What the book holds of one kind now, asked of the database itself. */
export async function ofKind<K extends Kind>(kitchen: KitchenServer, kind: K): Promise<EntryOf<K>[]> {
  const db = await openBook(kitchen.environment);
  try {
    const [site] = await listSites(db);
    const all: Entry[] = site ? await loadAll(db, site.site) : [];
    return all.filter((entry) => entry.kind === kind) as Entry[] as EntryOf<K>[];
  } finally {
    await db.close();
  }
}
