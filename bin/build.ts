import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeLocalModule } from './local-module.ts';
import { say, secondsSince } from './say.ts';

export const root = new URL('..', import.meta.url).pathname;
const stampFile = join(root, '.next', 'built-from.sha256');
const builtFrom = ['app', 'db', 'lib', 'shared', 'next.config.mjs', 'tsconfig.json', 'package-lock.json'];

/** Paths below `path` that a page can be built from, sorted: the same tree gives the same list on any machine. */
function filesBelow(path: string): string[] {
  if (statSync(path).isFile()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesBelow(join(path, name)));
}

/** SHA-256 over names and contents of everything that the pages are built from. */
function sourcesHash(): string {
  const hash = createHash('sha256');
  for (const name of builtFrom) {
    for (const file of filesBelow(join(root, name)))
      hash.update(file.slice(root.length)).update(readFileSync(file));
  }
  return hash.digest('hex');
}

const isBuiltFrom = (hash: string): boolean =>
  existsSync(join(root, '.next', 'BUILD_ID')) &&
  existsSync(stampFile) &&
  readFileSync(stampFile, 'utf8') === hash;

/** Builds the pages when there are none or their sources changed, and says so. @throws Error when the build fails */
export async function buildIfChanged(): Promise<void> {
  writeLocalModule(); // a local profile is one file: whoever adds it need not know of the module
  const hash = sourcesHash();
  if (isBuiltFrom(hash)) return;
  say('Building the pages (about half a minute, again only when the sources change):');
  const started = Date.now();
  const clock = setInterval(() => say(`  … still building, ${secondsSince(started)} s`), 10_000);
  try {
    while (!isBuiltFrom(hash)) {
      if (await runBuild()) writeFileSync(stampFile, hash);
      else await new Promise((wake) => setTimeout(wake, 2000)); // somebody else's build: it may be the same
    }
  } finally {
    clearInterval(clock);
  }
  say(`  built in ${secondsSince(started)} s.`);
}

/** False when another build holds the folder. @throws Error with the builder's words when the build fails */
function runBuild(): Promise<boolean> {
  const child = spawn(process.execPath, [join(root, 'node_modules/next/dist/bin/next'), 'build'], {
    cwd: root,
    env: { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let words = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => (words += chunk));
  return new Promise((done, fail) => {
    child.on('error', fail);
    child.on('exit', (code) => {
      if (code === 0) done(true);
      else if (words.includes('Another next build process is already running')) done(false);
      else fail(new Error(`the build failed:\n${words}`));
    });
  });
}
