import type { Problem } from '#shared/problem.ts';

const otherOrigin: Problem = { field: '', problem: 'other_origin', remedy: 'open_here', values: {} };

/**
 * Null when a page of this server sent the request, else the problem. A browser names the page's origin on each
 * POST, and `Sec-Fetch-Site` where the connection is trusted; a program that is no browser sends neither and
 * carries nobody's cookies by accident.
 */
export function foreign(request: Request): Problem | null {
  const site = request.headers.get('sec-fetch-site');
  if (site !== null && site !== 'same-origin' && site !== 'none') return otherOrigin;
  const origin = request.headers.get('origin');
  if (origin === null) return null;
  const host = request.headers.get('host') ?? new URL(request.url).host;
  try {
    return new URL(origin).host === host ? null : otherOrigin;
  } catch {
    return otherOrigin; // "null" of a sandboxed frame or a file
  }
}
