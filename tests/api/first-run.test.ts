import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { POST as demo } from '#app/api/demo/route.ts';
import { POST as entries } from '#app/api/entries/route.ts';
import { POST as firstRunRoute } from '#app/api/first-run/route.ts';
import { GET as health } from '#app/api/health/route.ts';
import { POST as signIn } from '#app/api/sign-in/route.ts';
import { demoSecrets } from '#db/demo/fill.ts';
import { listSites, loadAll } from '#db/load.ts';
import type { FreshBook } from '../db/fresh-book.ts';
import { Browser, problemsIn } from './browser.ts';
import { airReading, firstRun, person, routesOnFreshBook } from './kitchen.ts';

let book: FreshBook;

describe('the first run', () => {
  beforeAll(async () => {
    book = await routesOnFreshBook();
  });
  afterAll(() => book.close());

  test('refuses a kitchen with a fault by its field, and leaves the book empty', async () => {
    const asked = firstRun(person());
    const wrong = { ...asked, site: { ...asked.site, name: ' ', zone: '' } };
    const answer = await new Browser().post(firstRunRoute, wrong);
    expect(answer.status).toBe(422);
    expect((answer.json.problems as { field: string }[]).map(({ field }) => field)).toEqual([
      'site.name',
      'site.zone',
    ]);
    expect(await listSites(book.db)).toEqual([]);
  });

  test('of two browsers at once makes one kitchen, and the one that made it is in', async () => {
    const [first, second] = [new Browser(), new Browser()];
    const owner = person();
    const answers = await Promise.all([
      first.post(firstRunRoute, firstRun(owner)),
      second.post(firstRunRoute, firstRun(owner)),
    ]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
    expect(await listSites(book.db)).toHaveLength(1);
    const inside = answers[0]?.status === 200 ? first : second;
    const { json } = await inside.post(entries, [airReading(owner.person)]);
    expect(json.receipts).toMatchObject([{ known: 'secret', problem: null }]);
    const outside = inside === first ? second : first;
    expect((await outside.post(entries, [airReading(owner.person)])).status).toBe(401);
  });

  test('writes what it did in the book: kitchen, person, secret, device, equipment (demand:21)', async () => {
    const [site] = await listSites(book.db);
    const kinds = (await loadAll(book.db, site?.site ?? ''))
      .sort((a, b) => a.seq - b.seq)
      .map(({ kind }) => kind);
    expect(kinds.slice(0, 5)).toEqual(['site', 'person', 'secret_set', 'device_enrolled', 'equipment']);
  });

  test('the demo is not poured over a kitchen', async () => {
    const answer = await new Browser().post(demo, {});
    expect(problemsIn(answer)).toEqual(['already_set_up']);
  });

  test('health says that the server lives and can read its book', async () => {
    const answer = await health(new Request('http://kitchen.example/api/health'));
    expect(answer.status).toBe(200);
    expect(await answer.json()).toMatchObject({ live: true, ready: true, problems: [] });
  });
});

describe('the demo', () => {
  beforeAll(async () => {
    book = await routesOnFreshBook();
  });
  afterAll(() => book.close());

  test('fills an empty book, lets the browser in, and its people sign in with the secrets it says', async () => {
    const browser = new Browser();
    const answer = await browser.post(demo, {});
    expect(answer.json).toEqual({ next: '/sign-in', secrets: demoSecrets });
    const [site] = await listSites(book.db);
    const people = (await loadAll(book.db, site?.site ?? '')).flatMap((entry) =>
      entry.kind === 'person' ? [entry.body] : [],
    );
    expect(people.length).toBe(7);
    for (const { person: id, role } of people) {
      const secret = role === 'manager' ? demoSecrets.manager : demoSecrets.crew;
      expect((await browser.post(signIn, { person: id, secret })).status).toBe(200);
    }
  });
});
