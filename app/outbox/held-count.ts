/** How many entries of a site this phone held when it was last counted, and when (ms, by this phone's clock). */
type Counted = { held: number; at: number };

const cacheName = 'holdproof.held';
const pageKey = (site: string): string => `holdproof.held.${site}`;
const workerKey = (site: string): string => `/holdproof.held/${site}`; // of a cache: looks like an address and is none

/** A page's place for it: it outlives an emptied database. A worker has none. */
function ofPages(): Storage | null {
  try {
    return typeof localStorage === 'undefined' ? null : localStorage;
  } catch {
    return null;
  }
}

/** The worker's, which a page can read too: without it a page would miss what the worker sent and call it lost. */
const ofWorker = async (): Promise<Cache | null> =>
  typeof caches === 'undefined' ? null : caches.open(cacheName).catch(() => null);

/** Notes the count apart from the database. Where it cannot be, an emptied database is not noticed, and nothing else changes. */
export async function noteHeld(site: string, held: number): Promise<void> {
  const counted = JSON.stringify({ held, at: Date.now() } satisfies Counted);
  try {
    const pages = ofPages();
    if (pages !== null) pages.setItem(pageKey(site), counted);
    else await (await ofWorker())?.put(workerKey(site), new Response(counted));
  } catch {
    // a full store of small values
  }
}

/** How many should be there: what was counted last, by a page or by the worker. 0 = nobody counted. */
export async function heldLast(site: string): Promise<number> {
  const worker = await (await ofWorker())?.match(workerKey(site)).catch(() => undefined);
  const [page, other] = [read(ofPages()?.getItem(pageKey(site))), read(await worker?.text())];
  return (other.at > page.at ? other : page).held;
}

function read(text: string | null | undefined): Counted {
  try {
    const { held, at } = JSON.parse(text ?? '') as Partial<Counted>;
    return { held: Number(held ?? 0), at: Number(at ?? 0) };
  } catch {
    return { held: 0, at: 0 };
  }
}
