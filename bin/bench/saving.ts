import { v7 } from 'uuid';
import { airReading, type Visitor } from '../visitor.ts';
import type { Side } from './ratio.ts';

const WARM_UP = 40;

async function timed(call: () => Promise<Response>): Promise<number> {
  const from = performance.now();
  const response = await call();
  const answer = (await response.json()) as { receipts?: { problem: unknown }[] };
  const took = performance.now() - from;
  if (!response.ok || answer.receipts?.some(({ problem }) => problem !== null)) {
    throw new Error(`bench: a post was refused: ${response.status} ${JSON.stringify(answer)}`);
  }
  return took;
}

/**
 * Milliseconds a post: a reading into the book over HTTP, and a bare Next route that inserts one row of the same
 * size, in turns, against servers on one machine and one PostgreSQL.
 */
export async function saving(
  urls: { book: string; bare: string },
  visitor: Visitor,
  posts = 400,
): Promise<{ ours: Side; bare: Side }> {
  const ours: Side = { name: 'reading', values: [] };
  const bare: Side = { name: 'bare row', values: [] };
  const saveReading = (n: number): Promise<Response> => {
    const body = JSON.stringify([airReading(visitor, n)]);
    return fetch(`${urls.book}/api/entries`, { method: 'POST', body, headers: visitor.headers });
  };
  const saveRow = (n: number): Promise<Response> => {
    const body = JSON.stringify({ id: v7(), body: JSON.stringify(airReading(visitor, n)) });
    return fetch(`${urls.bare}/api/row`, {
      method: 'POST',
      body,
      headers: { 'content-type': 'application/json' },
    });
  };
  for (let n = 0; n < posts + WARM_UP; n += 1) {
    const reading = await timed(() => saveReading(n));
    const row = await timed(() => saveRow(n));
    if (n < WARM_UP) continue;
    ours.values.push(reading);
    bare.values.push(row);
  }
  return { ours, bare };
}
