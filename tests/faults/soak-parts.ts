import { spawn } from 'node:child_process';
import { join } from 'node:path';

/** What a soak does at a stretch: a suite of faults, or some kills of the whole plan with a book of their own. */
export type Part = { name: string; file: string; from: number; rounds: number };

/** Kills on one book: enough that a fault has a history to harm, few enough that reading it again stays quick. */
export const killsAtOnce = 10;
const kills = 'kill.test.ts';
const root = join(import.meta.dirname, '../..');
const vitest = join(root, 'node_modules/vitest/vitest.mjs');

/** The suites, each once, and then the kills by tens. */
export function partsOf(suites: readonly string[], rounds: number): Part[] {
  const others = suites.filter((file) => file !== kills).sort();
  return [
    ...others.map((file) => ({ name: file, file, from: 0, rounds: 0 })),
    ...Array.from({ length: Math.ceil(rounds / killsAtOnce) }, (_, n) => {
      const from = n * killsAtOnce;
      const to = Math.min(rounds, from + killsAtOnce);
      return { name: `kills ${from + 1} to ${to}`, file: kills, from, rounds: to - from };
    }),
  ];
}

/** Runs a part; its words go to the screen. @returns null when nothing was found, else the end of its words */
export function runPart(
  { file, from, rounds }: Part,
  { seed, awayS }: { seed: string; awayS: number },
): Promise<string | null | 'stopped'> {
  const child = spawn(process.execPath, [vitest, 'run', `tests/faults/${file}`, '--reporter=verbose'], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {
      ...process.env,
      HOLDPROOF_FAULT_FROM: String(from),
      HOLDPROOF_FAULT_ROUNDS: String(rounds),
      HOLDPROOF_FAULT_AWAY_S: String(awayS),
      HOLDPROOF_FAULT_SEED: seed,
    },
  });
  let words = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk: Buffer) => {
      words = `${words}${chunk}`.slice(-20_000);
      process.stderr.write(chunk);
    });
  let stopped = false;
  const stop = () => {
    stopped = true;
    child.kill('SIGTERM');
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, stop);
  return new Promise((done) => {
    child.on('exit', (code) => {
      for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.off(signal, stop);
      if (stopped) done('stopped');
      else done(code === 0 ? null : words.slice(-6000));
    });
  });
}
