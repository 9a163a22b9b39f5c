import { networkInterfaces } from 'node:os';

const loopback = /^(localhost|127\.|\[?::1\]?)/;

/** Whether a Host header means the machine itself, for which no seal is needed. */
export const isLoopback = (host: string | null): boolean => loopback.test(host ?? '');

/**
 * Where a phone in the kitchen's network may reach this server, the likeliest first: the address by which the
 * asking browser came (unless it came from this machine itself), then this machine's own addresses. Empty when
 * the server listens on this machine only.
 */
export function addressesOf(asked: { host: string | null; https: boolean }): string[] {
  const scheme = asked.https ? 'https' : 'http';
  const came = asked.host !== null && !loopback.test(asked.host) ? [`${scheme}://${asked.host}`] : [];
  const bound = process.env.HOLDPROOF_HOST ?? process.env.HOST ?? '0.0.0.0';
  if (loopback.test(bound)) return came;
  const port = process.env.HOLDPROOF_PORT ?? process.env.PORT ?? '3000';
  const own = Object.values(networkInterfaces())
    .flat()
    .filter((one) => one !== undefined && one.family === 'IPv4' && !one.internal)
    .map((one) => `http://${one?.address}:${port}`);
  return [...new Set([...came, ...own])];
}

/** Whether the server was started for this machine alone. */
export const onlyHere = (): boolean => loopback.test(process.env.HOLDPROOF_HOST ?? process.env.HOST ?? '');
