import { execFileSync } from 'node:child_process';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { type KitchenServer, startKitchen } from '#bin/kitchen-server.ts';
import { airReading, firstVisit, type Visitor } from '#bin/visitor.ts';
import { settlePlace } from '#db/embedded/place.ts';
import { silent } from '#db/say.ts';
import type { Draft } from '#shared/entries/entry.ts';
import { expectBookKept } from './kept-after-fault.ts';
import { killDatabase, postmasterOf } from './kill-database.ts';
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

let looks = 0;

const hands = 20; // posts under way at once

/**
 * Posts without end until the kill, which comes when twenty were answered; then each once more, as a phone does.
 * @returns how many posts the kill left without an answer
 */
async function underFire(kill: () => void): Promise<number> {
  const drafts: Draft[] = [];
  const before = phone.told.size;
  let underWay: number | null = null;
  const untilKilled = async (): Promise<void> => {
    while (underWay === null) {
      const draft = airReading(visitor, looks++);
      drafts.push(draft);
      await phone.post(kitchen.url, [draft]);
      const told = phone.told.size - before;
      if (underWay !== null || told < 20) continue;
      underWay = drafts.length - told;
      kill();
    }
  };
  await Promise.all(Array.from({ length: hands }, untilKilled));
  expect(underWay).toBeGreaterThanOrEqual(hands / 2); // else the kill had nothing to cut
  const cut = drafts.length - (phone.told.size - before);
  for (const draft of drafts) await phone.postUntilTold(kitchen.url, [draft]);
  expect(phone.told.size - before).toBe(drafts.length);
  await expectBookKept(kitchen.environment, [phone]);
  return cut;
}

test('a server killed under load comes back by itself, with every acknowledged entry once (demand:68)', async () => {
  const back = kitchen.waitFor('The server is back', 120_000);
  expect(await underFire(() => process.kill(serving(), 'SIGKILL'))).toBeGreaterThan(0);
  await back;
});

test('a database killed under a whole server is started again by it, with every acknowledged entry once', async () => {
  const { cluster } = settlePlace(kitchen.environment, silent);
  const killed = postmasterOf(cluster);
  // A post that the kill cut may still be answered: the server holds it until the database is back.
  await underFire(() => killDatabase(cluster));
  expect(postmasterOf(cluster)).not.toBe(killed);
});
