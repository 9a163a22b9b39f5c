import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { programFolder } from '#db/program-folder.ts';
import type { Attendance } from './attendance.ts';
import type { Place } from './place.ts';

const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
const numbers = { SIGINT: 2, SIGTERM: 15, SIGHUP: 1 };

/**
 * A process that ends without closing the book still leaves it: on its way out it waits for a small process that
 * does so in its stead. Signals that nobody handles are turned into such an exit.
 *
 * @returns takes the arrangement back: the book was closed in time
 */
export function leaveOnExit(place: Place, attendance: Attendance): () => void {
  const { sockets, backend } = attendance;
  const leave = () => {
    if (!attendance.present()) return;
    const script = join(programFolder(), 'db', 'embedded', 'leave.ts');
    spawnSync(process.execPath, [script, JSON.stringify({ place, sockets, backend })], { stdio: 'ignore' });
  };
  const ends = signals.map((signal) => ({ signal, end: () => process.exit(128 + numbers[signal]) }));
  const added = ends.filter(({ signal }) => process.listenerCount(signal) === 0);
  process.on('exit', leave);
  for (const { signal, end } of added) process.on(signal, end);
  return () => {
    process.off('exit', leave);
    for (const { signal, end } of added) process.off(signal, end);
  };
}
