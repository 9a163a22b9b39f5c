import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { firstVisit, type Visitor } from '#bin/visitor.ts';
import { type Api, keepApi } from './api-process.ts';
import { expectBookKept } from './kept-after-fault.ts';
import { killDatabase } from './kill-database.ts';
import { panOfBeans } from './night-load.ts';
import { Phone } from './phone.ts';
import { killPlan, type Round } from './plan.ts';

// Each round recovers a database and starts processes: on a busy machine that takes its time.
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

const seed = Number(process.env.HOLDPROOF_FAULT_SEED ?? 1);
/** The rounds of a long plan that this run is to do: the same moments, however the plan is divided. */
const first = Number(process.env.HOLDPROOF_FAULT_FROM ?? 0);
const rounds = killPlan(seed, first + Number(process.env.HOLDPROOF_FAULT_ROUNDS ?? 6)).slice(first);

const postsOfARound = 100; // they go on well past the latest kill of the plan

let data: string;
let env: NodeJS.ProcessEnv;
let api: Api;
let visitor: Visitor;
let phone: Phone;
let cutShort = 0;

beforeAll(async () => {
  data = mkdtempSync(join(tmpdir(), 'holdproof-kill-'));
  chmodSync(data, 0o755);
  env = { ...process.env, DATABASE_URL: '', HOLDPROOF_DATABASE: '', HOLDPROOF_DATA: data };
  api = await keepApi(env);
  visitor = await firstVisit(api.url);
  phone = new Phone(visitor);
});
afterAll(async () => {
  await api.stop();
  rmSync(data, { recursive: true, force: true });
});

function strike(victim: Round['victim']): void {
  if (victim !== 'server') killDatabase(join(data, 'postgres'));
  if (victim !== 'database') process.kill(api.pid(), 'SIGKILL');
}

describe(`SIGKILL at a random moment under load loses nothing that was acknowledged (seed ${seed})`, () => {
  test.each(rounds)('round $n: of the $victim, $ms ms after receipt $receipts', async (round) => {
    const { begin, posts } = panOfBeans(visitor, postsOfARound);
    await phone.postUntilTold(api.url, begin);
    const before = phone.told.size;
    let struck: Promise<void> | null = null;
    let isStruck = false;
    const cut = await Promise.all(
      posts.map(async (drafts, n) => {
        await sleep(n * 4);
        const wasUnderWay = !isStruck;
        const told = await phone.post(api.url, drafts);
        if (struck === null && phone.told.size - before >= round.receipts) {
          struck = sleep(round.ms).then(() => {
            isStruck = true;
            strike(round.victim);
          });
        }
        return wasUnderWay && !told;
      }),
    );
    expect(struck).not.toBeNull();
    await struck;
    if (cut.includes(true)) cutShort += 1;
    // The phone sends again what it has no receipt for, and, to be sure, everything else too.
    for (const drafts of posts) await phone.postUntilTold(api.url, drafts);
    await expectBookKept(env, [phone]);
  });

  test('most of the kills came while posts were under way: else they would show nothing', () => {
    expect(cutShort).toBeGreaterThan(rounds.length / 2);
    expect(api.restarts()).toBeGreaterThanOrEqual(
      rounds.filter(({ victim }) => victim !== 'database').length,
    );
  });
});
