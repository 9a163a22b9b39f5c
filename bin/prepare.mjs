// Runs under whatever Node the machine has (18 or newer): plain JavaScript, no dependency. It installs what is
// missing and hands over to the Node that package.json pins.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
const pinnedNode = join(root, 'node_modules', 'node', 'bin', 'node');
const stamp = join(root, 'node_modules', '.holdproof-installed');

export const say = (words) => process.stderr.write(`${words}\n`);

const lockHash = () =>
  createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
const installed = () =>
  existsSync(pinnedNode) && existsSync(stamp) && readFileSync(stamp, 'utf8') === lockHash();

/** Installs the dependencies of the lock file when they are missing or another lock file's. Says so, with a clock. */
export async function installWhatIsMissing() {
  if (installed()) return;
  say('Installing what Holdproof needs (about a minute, once):');
  const started = Date.now();
  const child = spawn('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, NODE_ENV: 'development' },
  });
  const clock = setInterval(() => say(`  … still installing, ${seconds(started)} s`), 10_000);
  const code = await new Promise((done) => {
    child.on('error', () => done(127));
    child.on('exit', (status) => done(status ?? 1));
  });
  clearInterval(clock);
  if (code !== 0) {
    say(`npm could not install the dependencies (npm's own words are above). With a network, try: npm ci`);
    process.exit(1);
  }
  writeFileSync(stamp, lockHash());
  say(`  installed in ${seconds(started)} s.`);
}

const seconds = (since) => Math.round((Date.now() - since) / 1000);

/** Environment in which the pinned Node comes first, so that everything started from here runs under it. */
export function pinnedEnvironment() {
  return { ...process.env, PATH: `${dirname(pinnedNode)}:${process.env.PATH ?? ''}` };
}

/**
 * Installs what is missing, then runs a TypeScript file under the pinned Node with these arguments and ends with
 * its status. Signals that reach this process reach the other.
 */
export async function runUnderPinnedNode(script, args) {
  await installWhatIsMissing();
  const child = spawn(pinnedNode, [join(root, script), ...args], {
    cwd: process.cwd(),
    stdio: 'inherit',
    env: pinnedEnvironment(),
  });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  child.on('error', (cause) => {
    say(`Could not start ${script}: ${cause.message}`);
    process.exit(1);
  });
  child.on('exit', (status, signal) => process.exit(status ?? (signal ? 1 : 0)));
}
