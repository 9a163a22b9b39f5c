import type { Sql } from 'postgres';
import type { Db } from '#db/connect.ts';
import { latest, loadKinds } from '#db/load.ts';
import { say } from '../say.ts';

const aDay = 500; // readings of a busy kitchen
const ofABatch = 50;
const atOnce = 100_000;

/** Does the work without the ledger's plain indexes and makes them again after it: much sooner than row by row. */
export async function withoutIndexes(owner: Sql, work: () => Promise<void>): Promise<void> {
  const indexes = await owner<{ name: string; makes: string }[]>`
    select indexrelid::regclass::text as name, pg_get_indexdef(indexrelid) as makes from pg_index
    where indrelid = 'ledger'::regclass and not indisunique`;
  for (const { name } of indexes) await owner.unsafe(`drop index ${name}`);
  await work();
  for (const { makes } of indexes) await owner.unsafe(makes);
}

/**
 * Lays years of readings before the night that is in the book: rows of the same make, straight into the table. Every
 * fifth is of a cabinet's air, the others of batches that are long gone. Their hashes chain nothing: they are weight.
 */
export async function layHistory(db: Db, site: string, readings: number): Promise<void> {
  const [first] = await loadKinds(db, site, ['batch']);
  const equipment = await loadKinds(db, site, ['equipment']);
  const probe = await latest(db, site, 'probe');
  if (!first || !probe) throw new Error('bench: the night is not in the book');
  const before = Date.parse(first.at) - 2 * 86_400_000;
  const stepMs = 86_400_000 / aDay;
  const places = equipment.map(({ body }) => body.equipment);
  const { sql } = db;
  for (let from = 0; from < readings; from += atOnce) {
    const to = Math.min(readings, from + atOnce);
    await sql`
      insert into ledger (site, seq, id, kind, version, at, entered_at, received_at, by, known, device, body, prev,
        hash, at_ms, subject)
      select ${site}::uuid, 1000000 + n, uuidv7(), 'reading', 1, said, said, said, ${first.by}::uuid, 'tap',
        ${first.device}::uuid,
        json_build_object('batch', batch, 'correction', null, 'equipment', place, 'held_s', null, 'late_reason', null,
          'piece', n % 8 + 1, 'probe', ${probe.body.probe}::text, 'round', null, 'source', 'hand',
          'spot', case when batch is null then 'air' else 'core' end, 'typed', (140 + n % 25)::text, 'unit', 'degF',
          'value', 140 + n % 25)::text,
        md5(n::text) || md5(said), md5(said) || md5(n::text), at_ms, coalesce(batch, place)
      from (
        select n, at_ms, to_char(to_timestamp(at_ms / 1000) at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"') as said,
          case when n % 5 = 0 then null else md5('batch ' || n / ${ofABatch}::int)::uuid end as batch,
          (${places}::uuid[])[1 + n % ${places.length}::int] as place
        from (
          select n, (${before}::float8 - n * ${stepMs}::float8)::bigint as at_ms
          from generate_series(${from + 1}::int, ${to}::int) as n
        ) as spaced
      ) as written`;
    say(`  ${to} of ${readings} readings laid`);
  }
  await sql`
    insert into batch_life (site, batch, from_ms, to_ms)
    select site, subject, min(at_ms), max(at_ms) from ledger
    where site = ${site} and seq > 1000000 and kind = 'reading' and subject <> all (${places}::uuid[])
    group by site, subject`;
}
