import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * SIGKILL of the whole database of a cluster: the process that starts the others, then each that serves a
 * connection. Killed alone, the first leaves the others to finish what they had begun, and nothing is cut.
 */
export function killDatabase(cluster: string): void {
  const postmaster = postmasterOf(cluster);
  const children = childrenOf(postmaster);
  process.kill(postmaster, 'SIGKILL');
  for (const pid of children) killUnlessGone(pid);
}

/** The process of a cluster that starts the others. */
export const postmasterOf = (cluster: string): number =>
  Number(readFileSync(join(cluster, 'postmaster.pid'), 'utf8').split('\n')[0]);

/** The processes that `pid` started and that still run. */
function childrenOf(pid: number): number[] {
  const listed = execFileSync('ps', ['-eo', 'pid=,ppid='], { encoding: 'utf8' });
  return listed
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number))
    .flatMap(([child, parent]) => (child !== undefined && parent === pid ? [child] : []));
}

function killUnlessGone(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error;
  }
}
