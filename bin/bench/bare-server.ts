import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../build.ts';
import { freePort } from '../kitchen-server.ts';

const folder = join(root, 'bin/bench/bare');
const next = join(root, 'node_modules/next/dist/bin/next');

/** Builds (once) and starts the bare Next application. `database`: options of postgres.js, as JSON-safe data. */
export async function startBare(database: object): Promise<{ url: string; stop: () => void }> {
  if (!existsSync(join(folder, '.next/BUILD_ID'))) {
    const built = spawnSync(process.execPath, [next, 'build', folder], {
      cwd: root,
      env: { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
      encoding: 'utf8',
    });
    if (built.status !== 0)
      throw new Error(`bench: the bare page does not build:\n${built.stdout}${built.stderr}`);
  }
  const port = await freePort();
  const child = spawn(process.execPath, [next, 'start', folder, '-p', String(port), '-H', '127.0.0.1'], {
    cwd: root,
    env: { ...process.env, NODE_ENV: 'production', BENCH_DATABASE: JSON.stringify(database) },
    stdio: 'ignore',
  });
  const url = `http://127.0.0.1:${port}`;
  for (let tries = 0; tries < 200; tries += 1) {
    const there = await fetch(url).then(
      (response) => response.ok,
      () => false,
    );
    if (there) return { url, stop: () => void child.kill('SIGKILL') };
    await new Promise((wake) => setTimeout(wake, 100));
  }
  child.kill('SIGKILL');
  throw new Error('bench: the bare server did not answer');
}
