import type { Problem } from '#shared/problem.ts';

/** SQLSTATE and driver codes under which the book cannot be written now, and what to say about it. */
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

function* codesOf(error: unknown): Generator<string> {
  let at: unknown = error;
  for (let depth = 0; depth < 6 && typeof at === 'object' && at !== null; depth += 1) {
    if ('code' in at && typeof at.code === 'string') yield at.code;
    at = 'cause' in at ? at.cause : null;
  }
}

/** What a fault of the database or the disk means for the person who was writing; null for any other error. */
export function faultOf(error: unknown): Problem | null {
  for (const code of codesOf(error)) {
    if (diskFull.has(code))
      return { field: '', problem: 'disk_full', remedy: 'free_space_and_retry', values: {} };
    if (unreachable.has(code) || code.startsWith('08'))
      return { field: '', problem: 'database_unreachable', remedy: 'kept_here_retry', values: {} };
  }
  return null;
}
