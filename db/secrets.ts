import { hash, verify } from '@node-rs/argon2';
import { and, eq, sql } from 'drizzle-orm';
import type { Db } from './connect.ts';
import type { Clock } from './ledger.ts';
import { secret } from './schema.ts';

/**
 * People's secrets: hashed by Argon2id with a salt of its own, in a table outside the ledger. Wrong tries are
 * counted per person, not per device or address, which whoever guesses can change.
 */
export type Checked =
  | { answer: 'right'; mustSet: boolean }
  | { answer: 'wrong'; triesLeft: number }
  | { answer: 'shut'; untilMs: number };

/** Tries in a row that may go wrong, and for how long a person's secret is then not asked at all. House choice. */
export const tries = { most: 5, shutMin: 10 } as const;

/** Argon2id, 19 MiB, two passes, one lane: common practice for an interactive sign-in. */
const cost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/** Hash of nothing that anyone knows: checking an unknown person costs the same as checking a known one. */
let decoy: Promise<string> | null = null;
const decoyHash = (): Promise<string> => {
  decoy ??= hash(`${Math.random()}`, cost);
  return decoy;
};

/** Stores a new secret and forgets wrong tries. `mustSet`: someone else chose it, and its owner must change it. */
export async function setSecret(
  db: Db,
  site: string,
  person: string,
  typed: string,
  clock: Clock,
  mustSet = false,
): Promise<void> {
  const fresh = { hash: await hash(typed, cost), setAt: new Date(clock()).toISOString(), mustSet };
  const values = { ...fresh, tries: 0, shutUntilMs: null };
  await db.drizzle
    .insert(secret)
    .values({ site, person, ...values })
    .onConflictDoUpdate({ target: [secret.site, secret.person], set: values });
}

/** Takes a secret away: nobody signs in as this person until a new one is set. */
export async function clearSecret(db: Db, site: string, person: string): Promise<void> {
  await db.drizzle
    .update(secret)
    .set({ hash: null, mustSet: true, tries: 0, shutUntilMs: null })
    .where(and(eq(secret.site, site), eq(secret.person, person)));
}

/** Whether a secret is there to be asked. False: never set, or reset. */
export async function hasSecret(db: Db, site: string, person: string): Promise<boolean> {
  const [row] = await rowOf(db, site, person);
  return (row?.hash ?? null) !== null;
}

/**
 * Checks a secret. The try is counted before the hash is compared, so that many at once cannot outrun the count;
 * a right one sets it back to none. While shut only a decoy is compared, at the same
 * cost: a right secret is not told from a wrong one, nor one who is shut from one who is not here.
 */
export async function checkSecret(
  db: Db,
  site: string,
  person: string,
  typed: string,
  clock: Clock,
): Promise<Checked> {
  const now = clock();
  const counted = await countTry(db, site, person, now);
  const stored = counted?.hash ?? null;
  const matches = await verify(stored ?? (await decoyHash()), typed);
  if (counted === null && (await rowOf(db, site, person)).length > 0) return shut(db, site, person, now);
  const right = matches && stored !== null;
  if (!right || counted === null) {
    return { answer: 'wrong', triesLeft: Math.max(0, tries.most - (counted?.tries ?? 1)) };
  }
  await db.drizzle
    .update(secret)
    .set({ tries: 0, shutUntilMs: null })
    .where(and(eq(secret.site, site), eq(secret.person, person)));
  return { answer: 'right', mustSet: counted.mustSet };
}

const rowOf = (db: Db, site: string, person: string) =>
  db.drizzle
    .select()
    .from(secret)
    .where(and(eq(secret.site, site), eq(secret.person, person)));

/** One statement under the row's lock: counts a try, or does nothing while shut. The last one shuts. */
async function countTry(db: Db, site: string, person: string, now: number) {
  const shutMs = tries.shutMin * 60_000;
  // Farther ahead than it is ever shut: shut by a clock that was ahead, and not to stay so until that day.
  const over = sql`(${secret.shutUntilMs} is not null
    and (${secret.shutUntilMs} <= ${now} or ${secret.shutUntilMs} > ${now + shutMs}))`;
  const next = sql`case when ${over} then 1 else ${secret.tries} + 1 end`;
  const [row] = await db.drizzle
    .update(secret)
    .set({
      tries: sql`${next}`,
      shutUntilMs: sql`case when ${next} >= ${tries.most} then ${now + shutMs}::bigint end`,
    })
    .where(
      and(eq(secret.site, site), eq(secret.person, person), sql`(${secret.shutUntilMs} is null or ${over})`),
    )
    .returning();
  return row ?? null;
}

async function shut(db: Db, site: string, person: string, now: number): Promise<Checked> {
  const [row] = await rowOf(db, site, person);
  return { answer: 'shut', untilMs: row?.shutUntilMs ?? now };
}
