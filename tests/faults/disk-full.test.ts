import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import postgres from 'postgres';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { firstVisit, type Visitor } from '#bin/visitor.ts';
import { openBook } from '#db/connect.ts';
import { ownerOn } from '#db/embedded/attendance.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { silent } from '#db/say.ts';
import { type Api, keepApi } from './api-process.ts';
import { expectBookKept } from './kept-after-fault.ts';
import { panOfBeans } from './night-load.ts';
import { Phone } from './phone.ts';

vi.setConfig({ testTimeout: 300_000, hookTimeout: 240_000 });

/** A disk of its own that can be filled: needs root and the right to mount, which a container may lack. */
const disk = mkdtempSync(join(tmpdir(), 'holdproof-disk-'));
const size = '160m'; // an empty book takes about 60
const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${size},mode=755`, 'none', disk]).status === 0;

let data: string;
let env: NodeJS.ProcessEnv;
let api: Api;
let visitor: Visitor;

beforeEach(async () => {
  chmodSync(disk, 0o755);
  data = join(disk, 'data');
  mkdirSync(data);
  env = {
    ...process.env,
    DATABASE_URL: '',
    HOLDPROOF_DATABASE: '',
    HOLDPROOF_DATA: data,
  };
  api = await keepApi(env);
  visitor = await firstVisit(api.url);
});
afterEach(async () => {
  await api.stop();
  if (mounted) execFileSync('umount', ['-l', disk]);
  rmSync(disk, { recursive: true, force: true });
});

/** What the first problem of an answer is called; '' = it was taken, or the server was gone. */
async function problemOf(drafts: object[]): Promise<string> {
  try {
    const answer = await fetch(`${api.url}/api/entries`, {
      method: 'POST',
      headers: visitor.headers,
      body: JSON.stringify(drafts),
      signal: AbortSignal.timeout(60_000),
    });
    const { problems } = (await answer.json()) as { problems?: { problem: string }[] };
    return problems?.[0]?.problem ?? '';
  } catch {
    return '';
  }
}

const name = mounted
  ? `a real disk (${size}) that is full`
  : 'a full disk (no disk can be mounted here without root: PostgreSQL raises its own error instead)';

test(`${name}: said in words, nothing acknowledged is lost, and all is taken when there is room`, async () => {
  const phone = new Phone(visitor);
  const before = panOfBeans(visitor, 20);
  await phone.postUntilTold(api.url, [...before.begin, ...before.posts.flat()]);
  const free = mounted ? await fill() : await raise();
  const said = new Set<string>();
  const waiting = [];
  for (let n = 0; n < 400 && !said.has('disk_full') && !said.has('database_unreachable'); n += 1) {
    const { begin, posts } = panOfBeans(visitor, 100);
    const all = [...begin, ...posts.flat()];
    waiting.push(all);
    if (!(await phone.post(api.url, all))) said.add(await problemOf(all));
  }
  expect([...said].filter((problem) => problem !== '')).not.toEqual([]);
  await free();
  for (const all of waiting) await phone.postUntilTold(api.url, all);
  await expectBookKept(env, [phone]);
});

/** Leaves a megabyte, which the next hundreds of entries take. Returns what makes room again. */
async function fill(): Promise<() => Promise<void>> {
  const { bavail, bsize } = statfsSync(disk);
  const ballast = join(disk, 'ballast');
  writeFileSync(ballast, Buffer.alloc(bavail * bsize - 1_000_000));
  return async () => rmSync(ballast);
}

async function raise(): Promise<() => Promise<void>> {
  const db = await openBook(env);
  const owner = postgres(ownerOn(settlePlace(env, silent).sockets, 'holdproof'));
  await owner.unsafe(`create function no_room() returns trigger language plpgsql as $$
    begin raise exception 'no space left on device' using errcode = 'disk_full'; end $$;
    create trigger no_room before insert on ledger for each statement execute function no_room()`);
  return async () => {
    await owner`drop trigger no_room on ledger`;
    await owner.end();
    await db.close();
  };
}
