import { spawn } from 'node:child_process';
import { setPriority } from 'node:os';
import { join } from 'node:path';
import { nightlyDue } from '#db/backup/due.ts';
import { backupState, runs } from '#db/backup/log.ts';
import { root } from './build.ts';

/** How often the running server looks whether the night's backup is due. House choice. */
const lookEveryMs = 5 * 60_000;

type Options = {
  env: NodeJS.ProcessEnv;
  say: (words: string) => void;
  everyMs?: number;
};

/**
 * Makes the nightly backup while the server runs: looks now and then whether one is due, and lets a process of its
 * own, with low priority, write it, test a restore and clear out old ones. HOLDPROOF_NIGHTLY=off leaves it to a
 * timer of the owner's. Of several servers on one database only one writes at a time.
 * @returns ends the looking; resolves when a backup that is under way has ended, which need not be waited for
 */
export function keepNightly({ env, say, everyMs = lookEveryMs }: Options): () => Promise<void> {
  if (env.HOLDPROOF_NIGHTLY === 'off') return async () => {};
  let under: Promise<void> | null = null;
  const look = (): void => {
    if (under !== null || !isDue(env, say)) return;
    under = backUp(env, say).finally(() => {
      under = null;
    });
  };
  const timer = setInterval(look, everyMs);
  return async () => {
    clearInterval(timer);
    await under;
  };
}

function isDue(env: NodeJS.ProcessEnv, say: Options['say']): boolean {
  const now = Date.now();
  try {
    return nightlyDue(backupState(runs(env), now), now);
  } catch (error) {
    say((error as Error).message); // the log of backups cannot be read: said at each look, and nothing else stops
    return false;
  }
}

/** 0 where the log cannot be read, which `isDue` says at the next look. */
function runCount(env: NodeJS.ProcessEnv): number {
  try {
    return runs(env).length;
  } catch {
    return 0;
  }
}

/** Its words are said when it made something or failed; "nothing to back up yet" is not said every five minutes. */
function backUp(env: NodeJS.ProcessEnv, say: Options['say']): Promise<void> {
  const before = runCount(env);
  const child = spawn(process.execPath, [join(root, 'bin/holdproof.ts'), 'backup', '--nightly'], {
    cwd: root,
    env,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  if (child.pid !== undefined) tryNice(child.pid);
  let said = '';
  child.stderr.on('data', (data: Buffer) => {
    said = `${said}${data}`.slice(-8000);
  });
  return new Promise((done) => {
    child.on('error', (error) => {
      say(error.message);
      done();
    });
    child.on('close', (code) => {
      if (code !== 0 || runCount(env) > before) say(said.trimEnd());
      done();
    });
  });
}

function tryNice(pid: number): void {
  try {
    setPriority(pid, 10);
  } catch {
    // It has ended already, or this system has no priorities: it works as well without.
  }
}
