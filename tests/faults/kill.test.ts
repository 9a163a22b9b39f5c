import { type ChildProcessByStdio, spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type Db, openBook } from '#db/connect.ts';
import { append, createSite, type Receipt } from '#db/ledger.ts';
import { clock, evening, hand, minutes, reading, site } from '../db/drafts.ts';
import { type Acknowledged, expectNothingLost } from './kept-after-kill.ts';

// Each test starts several processes and recovers a database: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 240_000 });

let data: string;
let env: NodeJS.ProcessEnv;
let here: string;

beforeEach(async () => {
  data = mkdtempSync(join(tmpdir(), 'holdproof-kill-'));
  chmodSync(data, 0o755);
  env = { ...process.env, DATABASE_URL: '', HOLDPROOF_DATA: data };
  const db = await openBook(env);
  const made = await createSite(db, hand, [site()], clock);
  if (made.site === null) throw new Error('the site was refused');
  here = made.site;
  await db.close();
});
afterEach(() => rmSync(data, { recursive: true, force: true }));

const drafts = Array.from({ length: 100 }, (_, n) =>
  reading(null, String(140 + (n % 20)), evening + minutes(n)),
);
const postmaster = (): number =>
  Number(readFileSync(join(data, 'postgres', 'postmaster.pid'), 'utf8').split('\n')[0]);

type Server = ChildProcessByStdio<Writable, Readable, null>;

/** Posts all hundred to a server of its own, and kills when `enough` receipts have come. */
async function postAndKill(enough: number, kill: (server: Server) => void): Promise<Acknowledged[]> {
  const server: Server = spawn(process.execPath, [join(import.meta.dirname, 'appender.ts'), here], {
    env,
    stdio: ['pipe', 'pipe', 'ignore'],
  });
  const exited = new Promise<void>((done) => server.once('exit', () => done()));
  server.stdin.on('error', () => {}); // the pipe of a killed process
  const acknowledged: Acknowledged[] = [];
  let killed = false;
  for await (const line of createInterface({ input: server.stdout })) {
    if (line === 'ready') for (const draft of drafts) server.stdin.write(`${JSON.stringify([draft])}\n`);
    else acknowledged.push(...taken(JSON.parse(line)));
    if (acknowledged.length >= enough && !killed) {
      killed = true;
      kill(server);
    }
  }
  await exited;
  return acknowledged;
}

const taken = (receipts: Receipt[]): Acknowledged[] =>
  receipts.flatMap((one) => (one.status === 'refused' ? [] : [{ id: one.id, seq: one.seq }]));

/** As a phone does: everything once more, then look. */
async function postAgain(db: Db): Promise<void> {
  const receipts = await append(db, { ...hand, site: here }, drafts, clock);
  expect(receipts.every(({ status }) => status !== 'refused')).toBe(true);
}

const sent = drafts.map(({ id }) => id);

describe('SIGKILL in the middle of a hundred posts loses no acknowledged entry and breaks no chain', () => {
  test.each([1, 10, 45, 90])('of the server, after %i receipts', async (enough) => {
    const acknowledged = await postAndKill(enough, (server) => server.kill('SIGKILL'));
    expect(acknowledged.length).toBeGreaterThanOrEqual(enough);
    const db = await openBook(env);
    await expectNothingLost(db, here, acknowledged, sent);
    await postAgain(db);
    await expectNothingLost(db, here, acknowledged, sent);
    await db.close();
  });

  test('of the database and the server at once', async () => {
    const acknowledged = await postAndKill(20, (server) => {
      process.kill(postmaster(), 'SIGKILL');
      server.kill('SIGKILL');
    });
    const db = await openBook(env);
    await expectNothingLost(db, here, acknowledged, sent);
    await postAgain(db);
    await expectNothingLost(db, here, acknowledged, sent);
    await db.close();
    expect(existsSync(join(data, 'postgres', 'postmaster.pid'))).toBe(false);
  });

  test('of the database alone, under a server that lives a little longer', async () => {
    const acknowledged = await postAndKill(20, (server) => {
      process.kill(postmaster(), 'SIGKILL');
      setTimeout(() => server.kill('SIGKILL'), 300);
    });
    const db = await openBook(env);
    await expectNothingLost(db, here, acknowledged, sent);
    await postAgain(db);
    await expectNothingLost(db, here, acknowledged, sent);
    await db.close();
  });
});
