import { randomBytes, timingSafeEqual } from 'node:crypto';
import { and, eq, isNull } from 'drizzle-orm';
import { v7 } from 'uuid';
import type { Db } from './connect.ts';
import type { Clock } from './ledger.ts';
import { device, signIn } from './schema.ts';
import { sha256 } from './sha256.ts';

/** A tablet or phone that was let in. */
export type Device = { site: string; device: string; name: string };

/** Someone who entered a secret on a device. Instants in ms. */
export type SignIn = { id: string; person: string; how: string; sinceMs: number; lastSeenMs: number };

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/**
 * Lets a device in. The token is given to it once and kept here only as its hash: "site.device.secret".
 * @returns the token, for a cookie that scripts cannot read
 */
export async function enrolDevice(db: Db, { site, device: id, name }: Device, clock: Clock): Promise<string> {
  const key = randomBytes(32).toString('base64url');
  const enrolledAt = new Date(clock()).toISOString();
  await db.drizzle
    .insert(device)
    .values({ site, device: id, name, tokenHash: sha256(key), enrolledAt, revokedAt: null });
  return `${site}.${id}.${key}`;
}

/**
 * The device to which a token was given, and who is signed in on it, longest first; null for any other text, and once
 * it was shut out. One question, by hand, for it is asked with each figure. How long a shift or idleness may last is the caller's to say.
 */
export async function deviceAndSignIns(
  db: Db,
  token: string,
): Promise<{ device: Device; open: SignIn[] } | null> {
  const [site = '', id = '', key = ''] = token.split('.');
  if (!uuid.test(site) || !uuid.test(id)) return null;
  const rows = await db.sql<(SignInOrNone & { name: string; tokenHash: string })[]>`
    select device.name, device.token_hash as "tokenHash",
      sign_in.id, person, how, since_ms::float8 as "sinceMs", last_seen_ms::float8 as "lastSeenMs"
    from device left join sign_in
      on sign_in.site = device.site and sign_in.device = device.device and ended_ms is null
    where device.site = ${site} and device.device = ${id} and revoked_at is null
    order by since_ms`;
  const [row] = rows;
  if (row === undefined) return null;
  if (!timingSafeEqual(Buffer.from(row.tokenHash), Buffer.from(sha256(key)))) return null;
  return { device: { site, device: id, name: row.name }, open: rows.flatMap(openOf) };
}

/** Whether a device is let in, as it is now: asked once more where something is written, by hand like the other. */
export async function isStillIn({ sql }: Pick<Db, 'sql'>, site: string, id: string): Promise<boolean> {
  const [row] = await sql<{ still: boolean }[]>`
    select revoked_at is null as still from device where site = ${site} and device = ${id}`;
  return row?.still === true;
}

/** One row a sign-in; where nobody is signed in one row of nulls. */
type SignInOrNone = SignIn | { [column in keyof SignIn]: null };

const openOf = ({ id, person, how, sinceMs, lastSeenMs }: SignInOrNone): SignIn[] =>
  id === null ? [] : [{ id, person, how, sinceMs, lastSeenMs }];

export async function devicesOf(db: Db, site: string): Promise<(typeof device.$inferSelect)[]> {
  return db.drizzle.select().from(device).where(eq(device.site, site)).orderBy(device.device);
}

/** Shuts a device out and ends what is open on it, in a transaction of the caller's. */
export async function revokeDevice(within: Db, site: string, id: string, clock: Clock): Promise<void> {
  await within.drizzle
    .update(device)
    .set({ revokedAt: new Date(clock()).toISOString() })
    .where(and(eq(device.site, site), eq(device.device, id), isNull(device.revokedAt)));
  await within.drizzle.update(signIn).set({ endedMs: clock() }).where(openOn(site, id));
}

const openOn = (site: string, id: string) =>
  and(eq(signIn.site, site), eq(signIn.device, id), isNull(signIn.endedMs));

/** Opens a sign-in; one that is open for the same person on the same device ends. */
export async function openSignIn(
  db: Db,
  who: { site: string; device: string; person: string; how: string },
  clock: Clock,
): Promise<SignIn> {
  const now = clock();
  const opened = { id: v7(), person: who.person, how: who.how, sinceMs: now, lastSeenMs: now };
  await db.drizzle.transaction(async (tx) => {
    await tx
      .update(signIn)
      .set({ endedMs: now })
      .where(and(openOn(who.site, who.device), eq(signIn.person, who.person)));
    await tx.insert(signIn).values({ ...opened, site: who.site, device: who.device });
  });
  return opened;
}

/** Notes that someone was just there. */
export async function seen(db: Db, site: string, id: string, person: string, clock: Clock): Promise<void> {
  await db.drizzle
    .update(signIn)
    .set({ lastSeenMs: clock() })
    .where(and(openOn(site, id), eq(signIn.person, person)));
}

/** Ends the sign-in of one person on a device, or (`person` null) of everybody there. */
export async function endSignIn(
  db: Db,
  site: string,
  id: string,
  person: string | null,
  clock: Clock,
): Promise<void> {
  await db.drizzle
    .update(signIn)
    .set({ endedMs: clock() })
    .where(person === null ? openOn(site, id) : and(openOn(site, id), eq(signIn.person, person)));
}
