import { request as ask, type IncomingHttpHeaders } from 'node:http';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { type KitchenServer, startKitchen } from '#bin/kitchen-server.ts';
import { airReading, firstVisit, type Visitor } from '#bin/visitor.ts';
import { expectBookKept } from './kept-after-fault.ts';
import { Phone } from './phone.ts';

vi.setConfig({ testTimeout: 240_000, hookTimeout: 480_000 });

let kitchen: KitchenServer;
let visitor: Visitor;
let phone: Phone;
let looks = 0;

beforeAll(async () => {
  kitchen = await startKitchen();
  visitor = await firstVisit(kitchen.url);
  phone = new Phone(visitor);
});
afterAll(() => kitchen.stop());

type Said = { status: number; headers: IncomingHttpHeaders; json: Record<string, unknown> };

/** Bytes on the wire as they are, in as many pieces as given; without a length when there are several. */
function send(pieces: readonly Buffer[], headers: Record<string, string> = {}): Promise<Said> {
  return new Promise((done, fail) => {
    const request = ask(`${kitchen.url}/api/entries`, {
      method: 'POST',
      headers: { ...visitor.headers, ...headers },
    });
    request.on('error', fail);
    request.on('response', (response) => {
      let text = '';
      response.on('data', (part: Buffer) => (text += part));
      response.on('end', () => {
        const json = JSON.parse(text) as Record<string, unknown>;
        done({ status: response.statusCode ?? 0, headers: response.headers, json });
      });
    });
    for (const piece of pieces.slice(0, -1)) request.write(piece);
    request.end(pieces.at(-1));
  });
}

const problemsOf = ({ json }: Said): string[] =>
  (json.problems as { problem: string }[]).map(({ problem }) => problem);
const oneLook = () => JSON.stringify([airReading(visitor, looks++)]);

/** What is refused whole, before anybody asks what it means; each with what it is called. */
const whole: [string, () => Promise<Said>, string][] = [
  ['two megabytes with their length', () => send([Buffer.alloc(2 * 1024 * 1024, ' ')]), 'body_too_large'],
  [
    'two megabytes that come in pieces and name no length',
    () => send(Array.from({ length: 32 }, () => Buffer.alloc(64 * 1024, ' '))),
    'body_too_large',
  ],
  [
    'a bomb: ten megabytes of blanks in gzip',
    () => send([gzipSync(Buffer.alloc(10 * 1024 * 1024, ' '))], { 'content-encoding': 'gzip' }),
    'packed',
  ],
  [
    'ISO 8859-1 said',
    () => send([Buffer.from('[]')], { 'content-type': 'application/json; charset=latin1' }),
    'not_utf8',
  ],
  ['ISO 8859-1 not said', () => send([Buffer.from('["ñ"]', 'latin1')]), 'not_utf8'],
  [
    'a form',
    () => send([Buffer.from('a=1')], { 'content-type': 'application/x-www-form-urlencoded' }),
    'not_json_type',
  ],
  ['half a list', () => send([Buffer.from('[{"id":')]), 'not_json'],
  ['nothing', () => send([]), 'not_json'],
  ['a hundred thousand brackets', () => send([Buffer.from('['.repeat(100_000) + ']'.repeat(100_000))]), ''],
  ['501 drafts', () => send([Buffer.from(JSON.stringify(Array(501).fill({})))]), 'too_many'],
];

test.each(whole)('%s: refused in words, and the server goes on', async (_, post, problem) => {
  const said = await post();
  if (problem === '')
    expect((said.json.receipts as { problem: { problem: string } }[])[0]?.problem.problem).toBe(
      'wrong_shape',
    );
  else {
    expect(said.status).toBe(422);
    expect(problemsOf(said)).toEqual([problem]);
  }
  expect(await phone.post(kitchen.url, [airReading(visitor, looks++)])).toBe(true);
});

test('from another page: 403; from a device that nobody let in: 401', async () => {
  expect((await send([Buffer.from(oneLook())], { origin: 'http://elsewhere.example' })).status).toBe(403);
  expect((await send([Buffer.from(oneLook())], { cookie: 'device=none' })).status).toBe(401);
});

test('receipts come in the order sent, the refused beside the taken, and the hand is kept in a cookie', async () => {
  const [good, odd] = [airReading(visitor, looks++), { ...airReading(visitor, looks++), kind: 'weather' }];
  const said = await send([Buffer.from(JSON.stringify([odd, good]))], { 'x-forwarded-proto': 'https' });
  const receipts = said.json.receipts as { id: string; seq: number | null }[];
  expect(receipts.map(({ id }) => id)).toEqual([odd.id, good.id]);
  expect(receipts.map(({ seq }) => seq !== null)).toEqual([false, true]);
  const [cookie = ''] = said.headers['set-cookie'] ?? [];
  expect(cookie).toContain(`hand=${visitor.person}`);
  expect(cookie).toContain('Secure'); // whoever stands in front of the server said that it was https
  phone.sent.add(good.id);
  await expectBookKept(kitchen.environment, [phone]);
});
