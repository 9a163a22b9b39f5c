import { execFileSync } from 'node:child_process';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { type KitchenServer, startKitchen } from '#bin/kitchen-server.ts';
import { airReading, firstVisit, type Visitor } from '#bin/visitor.ts';
import { openBook } from '#db/connect.ts';
import { listSites } from '#db/load.ts';
import type { Draft } from '#shared/entries/entry.ts';
import { type Acknowledged, expectNothingLost } from './kept-after-kill.ts';

// A whole server is killed and comes back: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let kitchen: KitchenServer;
let visitor: Visitor;
beforeAll(async () => {
  kitchen = await startKitchen();
  visitor = await firstVisit(kitchen.url);
});
afterAll(() => kitchen.stop());

/** The process that answers requests: the child of the one that `npm start` runs. */
const serving = (): number =>
  Number(
    execFileSync('ps', ['--ppid', String(kitchen.process.pid), '-o', 'pid=,args='], { encoding: 'utf8' })
      .split('\n')
      .find((line) => line.includes('bin/serve.ts'))
      ?.trim()
      .split(' ')[0],
  );

/** One post; null when the server was gone before it answered. */
async function post(draft: Draft): Promise<Acknowledged | null> {
  try {
    const response = await fetch(`${kitchen.url}/api/entries`, {
      method: 'POST',
      headers: visitor.headers,
      body: JSON.stringify([draft]),
    });
    const { receipts } = (await response.json()) as { receipts: { id: string; seq: number | null }[] };
    const seq = receipts[0]?.seq;
    return seq == null ? null : { id: draft.id, seq };
  } catch {
    return null;
  }
}

const isTaken = (one: Acknowledged | null): one is Acknowledged => one !== null;

test('a server killed in the middle of a hundred posts comes back by itself, with every acknowledged entry once', async () => {
  const drafts = Array.from({ length: 100 }, (_, n) => airReading(visitor, n));
  const back = kitchen.waitFor('The server is back', 120_000);
  let answered = 0;
  const answers = await Promise.all(
    drafts.map(async (draft, n) => {
      await new Promise((wake) => setTimeout(wake, n * 5));
      const answer = await post(draft);
      answered += answer ? 1 : 0;
      if (answered === 20 && answer) process.kill(serving(), 'SIGKILL');
      return answer;
    }),
  );
  const before = answers.filter(isTaken);
  expect(before.length).toBeGreaterThanOrEqual(20);
  expect(before.length).toBeLessThan(100); // else the kill came too late to prove anything
  await back;
  // The phone sends again what it has no receipt for, and, to be sure, everything else too.
  const after = await Promise.all(drafts.map(post));
  expect(after.filter(isTaken)).toHaveLength(100);
  const seqs = new Map(after.filter(isTaken).map(({ id, seq }) => [id, seq]));
  for (const { id, seq } of before) expect(seqs.get(id)).toBe(seq);

  const db = await openBook(kitchen.environment);
  try {
    const [site] = await listSites(db);
    if (!site) throw new Error('the site is gone');
    await expectNothingLost(
      db,
      site.site,
      after.filter(isTaken),
      drafts.map(({ id }) => id),
    );
  } finally {
    await db.close();
  }
});
