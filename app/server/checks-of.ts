import 'server-only';
import { loadKinds } from '#db/load.ts';
import type { Check } from '#lib/fold/book.ts';
import { foldNow } from '#lib/fold/fold-now.ts';
import { type Entry, setUpKinds } from '#shared/entries/entry.ts';
import { getDb } from './db.ts';

const YEAR_MS = 366 * 86_400_000;

/**
 * Checks of one thermometer over a year, corrections applied and judged; not what they make suspect. Only set-up,
 * checks and corrections are read, so that the length of the history costs little.
 */
export async function checksOf(session: { site: string }, probe: string): Promise<Check[]> {
  const now = Date.now();
  const entries = await loadKinds(await getDb(), session.site, [...setUpKinds, 'probe_check', 'amendment']);
  return foldNow(entries as readonly Entry[], now).checks.filter(
    (check) => check.probe === probe && now - check.at < YEAR_MS,
  );
}
