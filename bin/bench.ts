import postgres from 'postgres';
import { attend, ownerOn } from '#db/embedded/attendance.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { silent } from '#db/say.ts';
import { startBare } from './bench/bare-server.ts';
import { judging } from './bench/judging.ts';
import { ratioLine } from './bench/ratio.ts';
import { saving } from './bench/saving.ts';
import { scriptKb } from './bench/script-size.ts';
import { buildIfChanged } from './build.ts';
import { startKitchen } from './kitchen-server.ts';
import { say } from './say.ts';
import { firstVisit } from './visitor.ts';

/**
 * `npm run bench`: ratios, both sides measured in this run on this machine, one line each. Absolute figures are
 * printed beside them and mean nothing elsewhere.
 */
async function bareDatabase(
  env: NodeJS.ProcessEnv,
): Promise<{ options: object; leave: () => Promise<void> }> {
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

say('Judging 1,000 readings …');
const { ours, bare } = judging();
const lines = [
  ratioLine('judging a batch of 1,000 readings / one bare pass over them', ours, bare, 0.5, 5, 'µs'),
];

await buildIfChanged();
say('Starting a kitchen and a bare application on one PostgreSQL …');
const kitchen = await startKitchen();
const database = await bareDatabase(kitchen.environment);
const plain = await startBare(database.options);
try {
  const visitor = await firstVisit(kitchen.url);
  say('Saving readings and bare rows in turns …');
  const saved = await saving({ book: kitchen.url, bare: plain.url }, visitor);
  lines.push(
    ratioLine(
      'saving a reading over HTTP / a bare route that inserts a row',
      saved.ours,
      saved.bare,
      0.95,
      1.5,
      'ms',
    ),
  );
  const round = { name: 'round', values: [await scriptKb(`${kitchen.url}/round`, visitor.headers)] };
  const empty = { name: 'empty page', values: [await scriptKb(plain.url)] };
  lines.push(
    ratioLine('script of the round before the first tap / an empty page', round, empty, 0.5, 1.3, 'kB'),
  );
} finally {
  plain.stop();
  await database.leave();
  await kitchen.stop();
}
process.stdout.write(`${lines.join('\n')}\n`);
