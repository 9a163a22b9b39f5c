import { randomBytes } from 'node:crypto';
import { eq } from 'drizzle-orm';
import type { Db } from './connect.ts';
import { seal } from './schema.ts';

const installation = '00000000-0000-0000-0000-000000000000';
const known = new WeakMap<Db, string>();

/** The installation's key (64 hexadecimal characters). Of two servers that make it at once, both get the first one's. */
export async function sealKey(db: Db): Promise<string> {
  const kept = known.get(db);
  if (kept !== undefined) return kept;
  const made = randomBytes(32).toString('hex');
  await db.drizzle.insert(seal).values({ site: installation, key: made }).onConflictDoNothing();
  const [row] = await db.drizzle.select().from(seal).where(eq(seal.site, installation));
  if (!row) throw new Error('sealKey: the row that was just written is not there');
  known.set(db, row.key);
  return row.key;
}
