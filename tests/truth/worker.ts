import { parentPort } from 'node:worker_threads';
import { run } from './run.ts';

/** A thread that runs the stretches of seeds it is given, one after the other. */
parentPort?.on('message', ({ from, to }: { from: number; to: number }) => {
  parentPort?.postMessage(run(from, to));
});
