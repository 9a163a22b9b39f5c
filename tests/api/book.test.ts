import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { GET } from '#app/api/book/route.ts';
import { POST } from '#app/api/entries/route.ts';
import { devicesOf, revokeDevice } from '#db/devices.ts';
import { listSites } from '#db/load.ts';
import type { FreshBook } from '../db/fresh-book.ts';
import { airReading, newKitchen, routesOnFreshBook } from './kitchen.ts';

let book: FreshBook;
let kitchen: Awaited<ReturnType<typeof newKitchen>>;

beforeAll(async () => {
  book = await routesOnFreshBook();
  kitchen = await newKitchen();
});
afterAll(() => book.close());

function ask(edition?: string): Promise<Response> {
  const cookie = [...kitchen.tablet.jar].map(([name, value]) => `${name}=${value}`).join('; ');
  const known: HeadersInit = edition === undefined ? {} : { 'if-none-match': edition };
  return GET(new Request('http://kitchen.example:3000/api/book', { headers: { cookie, ...known } }));
}
const editionOf = (response: Response): string => response.headers.get('etag') ?? '';

describe('GET /api/book', () => {
  test('a phone that has the book of now gets its clock and nothing else', async () => {
    const first = await ask();
    expect(first.status).toBe(200);
    const again = await ask(editionOf(first));
    expect(again.status).toBe(304);
    expect(await again.text()).toBe('');
    expect(Math.abs(Number(again.headers.get('book-clock')) - Date.now())).toBeLessThan(5_000);
  });

  test('after a new entry it gets the whole again, with the entry in it', async () => {
    const before = editionOf(await ask());
    const one = airReading(kitchen.owner.person);
    await kitchen.tablet.post(POST, [one]);
    const after = await ask(before);
    expect(after.status).toBe(200);
    const { entries } = (await after.json()) as { entries: { id: string }[] };
    expect(entries.map(({ id }) => id)).toContain(one.id);
    expect((await ask(editionOf(after))).status).toBe(304);
  });

  test('another language on the phone is another answer', async () => {
    const before = editionOf(await ask());
    kitchen.tablet.jar.set('language', 'es');
    const after = await ask(before);
    expect(after.status).toBe(200);
    expect(((await after.json()) as { lang: string }).lang).toBe('es');
    kitchen.tablet.jar.delete('language');
  });

  test('a device that was put out is told so, whatever edition it names', async () => {
    const before = editionOf(await ask());
    const [{ site } = { site: '' }] = await listSites(book.db);
    const [tablet] = await devicesOf(book.db, site);
    await revokeDevice(book.db, site, tablet?.device ?? '', Date.now);
    const after = await ask(before);
    expect(after.status).toBe(401);
    const { problems } = (await after.json()) as { problems: { problem: string }[] };
    expect(problems.map(({ problem }) => problem)).toEqual(['device_unknown']);
  });
});
