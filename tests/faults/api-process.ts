import { type ChildProcess, fork } from 'node:child_process';
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { freePort } from '#bin/kitchen-server.ts';
import { sha256 } from '#db/sha256.ts';

const root = join(import.meta.dirname, '../..');
const folder = join(root, 'node_modules', '.cache', 'holdproof-faults');

/** api-server.ts and all that is ours in it, as one file that plain Node runs, named by what is in it. */
async function bundled(): Promise<string> {
  const made = await build({
    entryPoints: [join(import.meta.dirname, 'api-server.ts')],
    write: false,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    external: ['next', 'postgres', '@node-rs/argon2'],
    alias: { 'server-only': join(import.meta.dirname, '../server-only.ts') },
    logOverride: { 'empty-import-meta': 'silent' }, // the program is found from the working directory
  });
  const text = made.outputFiles[0]?.text ?? '';
  const file = join(folder, `api-server-${sha256(text).slice(0, 12)}.cjs`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(`${file}.${process.pid}`, text);
  renameSync(`${file}.${process.pid}`, file); // suites that run beside this one may be reading it
  return file;
}

let made: Promise<string> | undefined;

/** A server that is started again when it ends, as `npm start` does it. */
export type Api = {
  url: string;
  /** Its process now. */
  pid: () => number;
  /** How often it had to be started again. */
  restarts: () => number;
  /** Moves the server's clock by so much; a process started anew has the right time. */
  moveClock: (ms: number) => Promise<void>;
  stop: () => Promise<void>;
};

/** @param env what `openBook` asks for; PORT is chosen here */
export async function keepApi(env: NodeJS.ProcessEnv): Promise<Api> {
  made ??= bundled();
  const script = await made;
  const port = await freePort();
  let child: ChildProcess;
  let stopping = false;
  let restarts = 0;
  const start = (): Promise<void> =>
    new Promise((ready) => {
      child = fork(script, { cwd: root, env: { ...env, PORT: String(port) }, stdio: 'ignore' });
      child.once('message', () => ready());
      child.once('exit', () => {
        if (stopping) return;
        restarts += 1;
        setTimeout(() => void start().then(ready), 100);
      });
    });
  await start();
  return {
    url: `http://127.0.0.1:${port}`,
    pid: () => child.pid ?? 0,
    restarts: () => restarts,
    moveClock: (moveClockMs) =>
      new Promise((done) => {
        child.once('message', () => done());
        child.send({ moveClockMs });
      }),
    stop: async () => {
      stopping = true;
      if (child.exitCode !== null || child.signalCode !== null) return;
      child.kill('SIGTERM');
      await new Promise((done) => child.once('exit', done));
    },
  };
}
