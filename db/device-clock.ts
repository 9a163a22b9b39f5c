import { and, desc, eq, lte } from 'drizzle-orm';
import type { Db } from './connect.ts';
import { deviceClock } from './schema.ts';

/** How far a device's clock was off at one contact. `offMs` positive = the device is ahead of the server. */
export type ClockMeasure = { device: string; atMs: number; offMs: number };

/** A measure says something new when the clock moved by this much, or the last one is this old. House choice. */
export const newMeasure = { byMs: 2000, afterMs: 24 * 3_600_000 } as const;

const mostOffMs = 100 * 366 * 86_400_000; // beyond it is no clock but a faulty request

const lately = new WeakMap<Db, Map<string, ClockMeasure>>();

/**
 * Notes how far a device's clock is off, from the moment it says that it sent something. What says nothing new is
 * not written, nor is what is no time. The way of the request counts as the device being behind: tenths of a
 * second, seconds on a bad network.
 * @param sentMs the device's clock when it sent, ms
 * @param nowMs the server's clock when it came, ms
 */
export async function noteClock(
  db: Db,
  { site, device }: { site: string; device: string },
  sentMs: number,
  nowMs: number,
): Promise<void> {
  const offMs = Math.round(sentMs - nowMs);
  if (!Number.isSafeInteger(offMs) || Math.abs(offMs) > mostOffMs) return;
  const known = lately.get(db) ?? new Map<string, ClockMeasure>();
  lately.set(db, known);
  const key = `${site}/${device}`;
  const last = known.get(key) ?? (await lastMeasure(db, site, device, nowMs));
  const said = last !== null && Math.abs(last.offMs - offMs) < newMeasure.byMs;
  if (said && nowMs - last.atMs < newMeasure.afterMs) {
    known.set(key, last);
    return;
  }
  const measure = { device, atMs: nowMs, offMs };
  await db.drizzle
    .insert(deviceClock)
    .values({ site, ...measure })
    .onConflictDoNothing();
  known.set(key, measure);
}

async function lastMeasure(
  db: Db,
  site: string,
  device: string,
  nowMs: number,
): Promise<ClockMeasure | null> {
  const [row] = await db.drizzle
    .select({ device: deviceClock.device, atMs: deviceClock.atMs, offMs: deviceClock.offMs })
    .from(deviceClock)
    .where(and(eq(deviceClock.site, site), eq(deviceClock.device, device), lte(deviceClock.atMs, nowMs)))
    .orderBy(desc(deviceClock.atMs))
    .limit(1);
  return row ?? null;
}

/**
 * The last measure of each device of a site up to `nowMs`: what a server measured while its own clock was ahead does
 * not stand before what it measures since.
 */
export async function clocksNow(db: Db, site: string, nowMs: number): Promise<ClockMeasure[]> {
  return db.drizzle
    .selectDistinctOn([deviceClock.device], {
      device: deviceClock.device,
      atMs: deviceClock.atMs,
      offMs: deviceClock.offMs,
    })
    .from(deviceClock)
    .where(and(eq(deviceClock.site, site), lte(deviceClock.atMs, nowMs)))
    .orderBy(deviceClock.device, desc(deviceClock.atMs));
}

/**
 * Of these entries the ones that came from a device whose clock was then off by `leastMs` or more, with how far
 * (ms; positive = ahead): by the last measure up to the entry's receipt. A request's measure counts for its entries.
 */
export async function clocksOff(
  db: Db,
  site: string,
  ids: readonly string[],
  leastMs: number,
): Promise<Map<string, number>> {
  if (ids.length === 0) return new Map();
  const rows = await db.sql<{ id: string; off_ms: string }[]>`
    select l.id, c.off_ms from ledger l
    cross join lateral (
      select off_ms from device_clock
      where site = l.site and device = l.device
        and at_ms <= extract(epoch from l.received_at::timestamptz) * 1000
      order by at_ms desc limit 1) c
    where l.site = ${site} and l.id in ${db.sql([...ids])} and abs(c.off_ms) >= ${leastMs}`;
  return new Map(rows.map((row) => [row.id, Number(row.off_ms)]));
}
