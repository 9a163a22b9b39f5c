import 'server-only';
import type { Db } from '#db/connect.ts';
import { sealKey } from '#db/seal.ts';
import { hasSecret } from '#db/secrets.ts';
import type { Kitchen } from '#lib/fold/book.ts';
import { isCode } from './code.ts';
import { letsIn } from './standing-by.ts';

/** Who gave a code that is good now, and whom it invites (null = it lets in a device, whoever holds it). */
export type CodeGiven = { by: string; person: string | null };

/** Finds out what a code is for, or null for one that is none. An invitation is spent by the secret that it sets. */
export async function codeGiven(
  db: Db,
  site: string,
  kitchen: Kitchen,
  typed: string,
): Promise<CodeGiven | null> {
  const key = await sealKey(db);
  const now = Date.now();
  const people = [...kitchen.people.values()].filter(({ active }) => active);
  for (const { person: by, role } of people) {
    if (letsIn(role, 'crew') && isCode(key, { what: 'device', site, by }, typed, now))
      return { by, person: null };
    for (const { person, role: other } of people) {
      const invites = person !== by && letsIn(role, other);
      if (!invites || !isCode(key, { what: 'person', site, by, person }, typed, now)) continue;
      if (!(await hasSecret(db, site, person))) return { by, person };
    }
  }
  return null;
}
