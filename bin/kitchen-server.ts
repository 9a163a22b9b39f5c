import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const root = new URL('..', import.meta.url).pathname;

/** A whole Holdproof as `npm start` runs it, with a book of its own in a folder that goes with it. */
export type KitchenServer = {
  url: string;
  data: string;
  environment: NodeJS.ProcessEnv;
  process: ChildProcess;
  said: () => string;
  /** Resolves when the server has said these words again, after now. @throws Error after `withinMs` */
  waitFor: (words: string, withinMs?: number) => Promise<void>;
  stop: () => Promise<void>;
};

export function freePort(): Promise<number> {
  return new Promise((done, fail) => {
    const probe = createServer();
    probe.on('error', fail);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        typeof address === 'object' && address ? done(address.port) : fail(new Error('no port')),
      );
    });
  });
}

/** @param more environment beside PORT, HOST and HOLDPROOF_DATA; the pages must have been built */
export async function startKitchen(more: Record<string, string> = {}): Promise<KitchenServer> {
  const port = await freePort();
  const folder = mkdtempSync(join(tmpdir(), 'holdproof-kitchen-'));
  const data = join(folder, 'data');
  const environment = {
    ...process.env,
    PORT: String(port),
    HOST: '127.0.0.1',
    HTTPS_PORT: 'off', // many of them run on one machine
    HOLDPROOF_DATA: data,
    ...more,
  };
  const child = spawn(process.execPath, [join(root, 'bin/start.ts')], { env: environment, cwd: root });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (chunk: Buffer) => (said += chunk));
  const waitFor = async (words: string, withinMs = 60_000, from = said.length): Promise<void> => {
    const until = Date.now() + withinMs;
    while (!said.includes(words, from)) {
      if (Date.now() > until || child.exitCode !== null) throw new Error(`never said "${words}":\n${said}`);
      await new Promise((wake) => setTimeout(wake, 50));
    }
  };
  await waitFor('Holdproof is ready', 300_000, 0); // seconds on a quiet machine
  const stop = async (): Promise<void> => {
    if (child.exitCode === null && child.signalCode === null) {
      child.kill('SIGTERM');
      await new Promise((done) => child.once('exit', done));
    }
    rmSync(folder, { recursive: true, force: true });
  };
  return {
    url: `http://127.0.0.1:${port}`,
    data,
    environment,
    process: child,
    said: () => said,
    waitFor,
    stop,
  };
}
