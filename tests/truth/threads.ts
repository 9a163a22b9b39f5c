import { Worker } from 'node:worker_threads';
import type { Told } from './run.ts';

/** Runs stretches of seeds in so many threads. `done` is told each stretch as it ends, in any order. */
export async function inThreads(
  stretches: readonly { from: number; to: number }[],
  threads: number,
  done: (told: Told, from: number) => void,
): Promise<void> {
  let next = 0;
  const work = (worker: Worker): Promise<void> =>
    new Promise((finished, failed) => {
      const give = (): void => {
        const stretch = stretches[next++];
        if (stretch === undefined) {
          void worker.terminate().then(() => finished());
          return;
        }
        worker.once('message', (told: Told) => {
          done(told, stretch.from);
          give();
        });
        worker.postMessage(stretch);
      };
      worker.once('error', failed);
      give();
    });
  await Promise.all(
    Array.from({ length: threads }, () => work(new Worker(new URL('./worker.ts', import.meta.url)))),
  );
}
