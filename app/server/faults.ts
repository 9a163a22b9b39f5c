import { BookRefused } from '#db/refused.ts';
import type { Problem } from '#shared/problem.ts';

/** SQLSTATE and driver codes under which the book cannot be written now. */
const diskFull = new Set(['53100', 'ENOSPC']);
const unreachable = new Set([
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOENT', // the private socket is gone
  'ENOTFOUND',
  'ETIMEDOUT',
  'EPIPE',
  'CONNECTION_CLOSED',
  'CONNECTION_ENDED',
  'CONNECTION_DESTROYED',
  'CONNECT_TIMEOUT',
  '57P01', // shut down by its administrator
  '57P02', // shut down after a crash
  '57P03', // starting up, or shutting down
  '53300', // no connection left
]);

function* causesOf(error: unknown): Generator<object> {
  let at: unknown = error;
  for (let depth = 0; depth < 6 && typeof at === 'object' && at !== null; depth += 1) {
    yield at;
    at = 'cause' in at ? at.cause : null;
  }
}

const fault = (problem: string, remedy: string): Problem => ({ field: '', problem, remedy, values: {} });

/** What a fault of the database or the disk means for the person who was writing; null for any other error. */
export function faultOf(error: unknown): Problem | null {
  for (const cause of causesOf(error)) {
    if (cause instanceof BookRefused) return fault('database_unreachable', 'kept_here_retry');
    const code = 'code' in cause && typeof cause.code === 'string' ? cause.code : '';
    if (diskFull.has(code)) return fault('disk_full', 'free_space_and_retry');
    if (unreachable.has(code) || code.startsWith('08'))
      return fault('database_unreachable', 'kept_here_retry');
  }
  return null;
}
