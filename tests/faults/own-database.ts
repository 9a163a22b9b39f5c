import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import postgres from 'postgres';
import { ownerOn } from '#db/embedded/attendance.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { makeCluster, startServer, stopServer } from '#db/embedded/postmaster.ts';
import { silent } from '#db/say.ts';

/** A PostgreSQL of the house's own, reached by its address: nobody starts it again but who stopped it. */
export type OwnDatabase = {
  /** What `openBook` asks for. */
  env: NodeJS.ProcessEnv;
  start: () => Promise<void>;
  stop: () => Promise<void>;
  /** Stops it and throws it away. */
  close: () => Promise<void>;
};

export async function ownDatabase(): Promise<OwnDatabase> {
  const data = mkdtempSync(join(tmpdir(), 'holdproof-own-'));
  chmodSync(data, 0o755);
  const place = settlePlace({ ...process.env, HOLDPROOF_DATA: data }, silent);
  await makeCluster(place, silent);
  const start = async () => {
    if (!(await startServer(place))) throw new Error('the database did not start');
  };
  await start();
  const admin = postgres(ownerOn(place.sockets, 'postgres'));
  await admin`create role pit_owner login`;
  await admin`create role pit_app login`;
  await admin`create database kitchen owner pit_owner`;
  await admin.end();
  const url = (role: string) =>
    `postgres://${role}@/kitchen?host=${encodeURIComponent(place.sockets)}&port=5432`;
  return {
    env: {
      ...process.env,
      DATABASE_URL: url('pit_app'),
      DATABASE_OWNER_URL: url('pit_owner'),
      HOLDPROOF_DATA: data,
    },
    start,
    stop: () => stopServer(place),
    close: async () => {
      await stopServer(place);
      rmSync(data, { recursive: true, force: true });
    },
  };
}
