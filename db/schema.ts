import {
  bigint,
  boolean,
  index,
  integer,
  pgTable,
  primaryKey,
  text,
  unique,
  uuid,
} from 'drizzle-orm/pg-core';

/**
 * Every table and every index begins with `site`, and nothing refers across sites: so the tables can be spread by
 * site over several machines without a change. Triggers and privileges are in the hand-written migrations.
 */

/**
 * The ledger: one row an entry, never changed. `body` is the text that the hash covers. The columns after `hash`
 * are derived from the text for the indexes, and cover nothing.
 */
export const ledger = pgTable(
  'ledger',
  {
    site: uuid().notNull(),
    seq: bigint({ mode: 'number' }).notNull(),
    id: uuid().notNull(),
    kind: text().notNull(),
    version: integer().notNull(),
    at: text().notNull(),
    enteredAt: text('entered_at').notNull(),
    receivedAt: text('received_at').notNull(),
    by: uuid().notNull(),
    known: text().notNull(),
    device: uuid().notNull(),
    body: text().notNull(),
    prev: text().notNull(),
    hash: text().notNull(),
    atMs: bigint('at_ms', { mode: 'number' }).notNull(),
    subject: uuid(), // what it is about: a batch, else a probe or equipment
    target: uuid(), // the entry to which it refers
    day: text(), // the operating day that it signs
  },
  (t) => [
    primaryKey({ columns: [t.site, t.seq] }),
    unique('ledger_site_id').on(t.site, t.id),
    index('ledger_site_at').on(t.site, t.atMs, t.seq),
    index('ledger_site_kind').on(t.site, t.kind, t.atMs, t.seq),
    index('ledger_site_subject').on(t.site, t.subject, t.kind, t.atMs, t.seq),
    index('ledger_site_target').on(t.site, t.target),
    index('ledger_site_day').on(t.site, t.day),
  ],
);

/** The end of each site's chain: its row is locked while entries are appended. */
export const head = pgTable('head', {
  site: uuid().primaryKey(),
  seq: bigint({ mode: 'number' }).notNull(),
  hash: text().notNull(),
});

/**
 * From when to when each batch lived: derived from the ledger while appending, so that loading the night does not
 * ask the whole history which food is still there. `to_ms` null = something of it may still be there.
 */
export const batchLife = pgTable(
  'batch_life',
  {
    site: uuid().notNull(),
    batch: uuid().notNull(),
    fromMs: bigint('from_ms', { mode: 'number' }).notNull(),
    toMs: bigint('to_ms', { mode: 'number' }),
  },
  (t) => [
    primaryKey({ columns: [t.site, t.batch] }),
    index('batch_life_site_to').on(t.site, t.toMs, t.fromMs, t.batch),
  ],
);

/** The texts that signatures cover, each under its SHA-256. Insert only. */
export const signedText = pgTable(
  'signed_text',
  { site: uuid().notNull(), hash: text().notNull(), text: text().notNull() },
  (t) => [primaryKey({ columns: [t.site, t.hash] })],
);

/** People's secrets, outside the ledger: hashed, with the tries that went wrong since the last right one. */
export const secret = pgTable(
  'secret',
  {
    site: uuid().notNull(),
    person: uuid().notNull(),
    hash: text(), // null = was reset: a new one must be set
    setAt: text('set_at'),
    tries: integer().notNull().default(0),
    shutUntilMs: bigint('shut_until_ms', { mode: 'number' }),
    mustSet: boolean('must_set').notNull().default(false),
  },
  (t) => [primaryKey({ columns: [t.site, t.person] })],
);

/** Tablets and phones that were let in. */
export const device = pgTable(
  'device',
  {
    site: uuid().notNull(),
    device: uuid().notNull(),
    name: text().notNull(),
    tokenHash: text('token_hash').notNull(),
    enrolledAt: text('enrolled_at').notNull(),
    revokedAt: text('revoked_at'),
  },
  (t) => [primaryKey({ columns: [t.site, t.device] })],
);

/**
 * How far each device's clock was off when it sent something: the device's time minus the server's at the moment of
 * receipt (ms; positive = the device is ahead). Insert only; a measure that says nothing new is not written.
 */
export const deviceClock = pgTable(
  'device_clock',
  {
    site: uuid().notNull(),
    device: uuid().notNull(),
    atMs: bigint('at_ms', { mode: 'number' }).notNull(),
    offMs: bigint('off_ms', { mode: 'number' }).notNull(),
  },
  (t) => [primaryKey({ columns: [t.site, t.device, t.atMs] })],
);

/** Who is signed in on which device: one open row a person and device. */
export const signIn = pgTable(
  'sign_in',
  {
    site: uuid().notNull(),
    id: uuid().notNull(),
    device: uuid().notNull(),
    person: uuid().notNull(),
    how: text().notNull(), // 'secret'
    sinceMs: bigint('since_ms', { mode: 'number' }).notNull(),
    lastSeenMs: bigint('last_seen_ms', { mode: 'number' }).notNull(),
    endedMs: bigint('ended_ms', { mode: 'number' }),
  },
  (t) => [
    primaryKey({ columns: [t.site, t.id] }),
    index('sign_in_site_device').on(t.site, t.device, t.person, t.endedMs),
  ],
);

/**
 * The key with which device cookies are sealed and codes for new devices are made: random, made at its first use,
 * outside the ledger and never shown. One row, under the nil UUID: a cookie is opened before its site is known.
 */
export const seal = pgTable('seal', { site: uuid().primaryKey(), key: text().notNull() });
