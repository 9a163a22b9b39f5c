import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { say } from './say.ts';

const places = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

const found = (): string | null =>
  [process.env.CHROMIUM ?? '', ...places].find((path) => path && existsSync(path)) ?? null;

const run = (command: string, args: string[]): boolean =>
  spawnSync(command, args, {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  }).status === 0;

/**
 * Path of a Chromium for the browser tests. As root on a Debian machine it installs the package when there is
 * none; else it says what to install. @throws Error with those words
 */
export function chromiumPath(): string {
  const there = found();
  if (there) return there;
  const root = process.getuid?.() === 0;
  if (root && existsSync('/usr/bin/apt-get')) {
    say('Installing Chromium for the browser tests (Debian package chromium) …');
    if (
      run('apt-get', ['update', '-qq']) &&
      run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'])
    ) {
      const now = found();
      if (now) return now;
    }
  }
  throw new Error(
    'The browser tests need Chromium. Install it (on Debian: apt-get install chromium) or say where it is: CHROMIUM=/path npm test',
  );
}
