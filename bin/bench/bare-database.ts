import postgres from 'postgres';
import { attend, ownerOn } from '#db/embedded/attendance.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { silent } from '#db/say.ts';

/** A database of its own, with one bare table, on the PostgreSQL of a kitchen that runs under `env`. */
export async function bareDatabase(
  env: NodeJS.ProcessEnv,
): Promise<{ options: ReturnType<typeof ownerOn>; leave: () => Promise<void> }> {
  const attendance = await attend(settlePlace(env, silent), silent);
  const owner = postgres(ownerOn(attendance.sockets, 'postgres'));
  await owner`create database bench_bare`;
  await owner.end();
  const options = ownerOn(attendance.sockets, 'bench_bare');
  const sql = postgres(options);
  await sql`create table bench_row (id uuid primary key, body text not null)`;
  await sql.end();
  return { options, leave: () => attendance.leave() };
}
