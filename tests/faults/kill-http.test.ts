import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { type KitchenServer, startKitchen } from '#bin/kitchen-server.ts';
import { airReading, firstVisit, type Visitor } from '#bin/visitor.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { silent } from '#db/say.ts';
import { expectBookKept } from './kept-after-fault.ts';
import { Phone } from './phone.ts';

// A whole server is killed and comes back: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

let kitchen: KitchenServer;
let visitor: Visitor;
let phone: Phone;
beforeAll(async () => {
  kitchen = await startKitchen();
  visitor = await firstVisit(kitchen.url);
  phone = new Phone(visitor);
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

const postmaster = (): number => {
  const { cluster } = settlePlace(kitchen.environment, silent);
  return Number(readFileSync(join(cluster, 'postmaster.pid'), 'utf8').split('\n')[0]);
};

let looks = 0;

/** A hundred posts, the kill when twenty were answered; then everything once more, as a phone does. */
async function underFire(kill: () => void): Promise<void> {
  const drafts = Array.from({ length: 100 }, () => airReading(visitor, looks++));
  const before = phone.told.size;
  let killed = false;
  const answers = await Promise.all(
    drafts.map(async (draft, n) => {
      await sleep(n * 5);
      const answered = await phone.post(kitchen.url, [draft]);
      if (!killed && phone.told.size - before >= 20) {
        killed = true;
        kill();
      }
      return answered;
    }),
  );
  expect(answers.filter(Boolean).length).toBeGreaterThanOrEqual(20);
  expect(answers).toContain(false); // else the kill came too late to prove anything
  await Promise.all(drafts.map((draft) => phone.postUntilTold(kitchen.url, [draft])));
  expect(phone.told.size - before).toBe(100);
  await expectBookKept(kitchen.environment, [phone]);
}

test('a server killed in the middle of a hundred posts comes back by itself, with every acknowledged entry once (demand:68)', async () => {
  const back = kitchen.waitFor('The server is back', 120_000);
  await underFire(() => process.kill(serving(), 'SIGKILL'));
  await back;
});

test('a database killed under a whole server is started again by it, with every acknowledged entry once', async () => {
  await underFire(() => process.kill(postmaster(), 'SIGKILL'));
});
