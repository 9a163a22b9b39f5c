import { v7 } from 'uuid';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { POST as enrol } from '#app/api/enrol/route.ts';
import { POST as entries } from '#app/api/entries/route.ts';
import { POST as putOut } from '#app/api/put-out/route.ts';
import { POST as signOut } from '#app/api/sign-out/route.ts';
import { managerHere } from '#app/server/put-out.ts';
import type { Session } from '#app/server/session.ts';
import { devicesOf, revokeDevice } from '#db/devices.ts';
import { appRole } from '#db/embedded/roles.ts';
import { listSites, loadAll } from '#db/load.ts';
import { foldKitchen } from '#lib/fold/kitchen.ts';
import type { FreshBook } from '../db/fresh-book.ts';
import { type Answer, Browser, problemsIn } from './browser.ts';
import { airReading, draft, newKitchen, ownerSecret, person, routesOnFreshBook } from './kitchen.ts';

let book: FreshBook;
let kitchen: Awaited<ReturnType<typeof newKitchen>>;
const lost = new Browser();

beforeAll(async () => {
  book = await routesOnFreshBook();
  kitchen = await newKitchen();
  const { name } = kitchen.owner;
  await lost.post(enrol, { by: 'manager', name, secret: ownerSecret, device: 'lost phone' });
});
afterAll(() => book.close());

const site = async (): Promise<string> => (await listSites(book.db))[0]?.site ?? '';
const lostDevice = async () =>
  (await devicesOf(book.db, await site())).find(({ name }) => name === 'lost phone');
const notes = async () =>
  (await loadAll(book.db, await site())).flatMap((entry) => (entry.kind === 'note' ? [entry] : []));

describe('a lost phone', () => {
  test('writes until it is put out, and nothing after it; the book says who did it, once', async () => {
    expect((await lost.post(entries, [airReading(kitchen.owner.person)])).status).toBe(200);
    const device = (await lostDevice())?.device;
    expect((await kitchen.tablet.post(putOut, { device })).status).toBe(200);
    const refused = await lost.post(entries, [airReading(kitchen.owner.person)]);
    expect(refused.status).toBe(401);
    expect(problemsIn(refused)).toEqual(['device_unknown']);
    expect((await lostDevice())?.revokedAt).not.toBeNull();
    expect((await kitchen.tablet.post(putOut, { device })).status).toBe(200);
    const said = await notes();
    expect(said.map(({ by, body, known }) => [by, body.text, known])).toEqual([
      [kitchen.owner.person, 'The device lost phone was put out.', 'secret'],
    ]);
  });

  test('writes nothing either with a post that was waiting for the chain when it was put out; those beside it do', async () => {
    const waiting = new Browser();
    const { name, person } = kitchen.owner;
    await waiting.post(enrol, { by: 'manager', name, secret: ownerSecret, device: 'lost phone 4' });
    const device = (await devicesOf(book.db, await site())).find(
      (one) => one.name === 'lost phone 4',
    )?.device;
    const [owner, watch] = [book.owner(), book.owner()];
    const [mine, theirs] = [airReading(person, 171.5), airReading(person, 172.5)];
    let answers: Promise<[Answer, Answer]> | undefined;
    await owner.begin(async (sql) => {
      await sql`select 1 from head where site = ${await site()} for update`;
      answers = Promise.all([waiting.post(entries, [theirs]), kitchen.tablet.post(entries, [mine])]);
      await expect
        .poll(async () => (await watch`select 1 from pg_locks where not granted`).length)
        .toBeGreaterThan(0);
      await revokeDevice(book.db, await site(), device ?? '', Date.now);
    });
    await Promise.all([owner.end(), watch.end()]);
    const [refused, taken] = (await answers) ?? [];
    expect([refused?.status, taken?.status]).toEqual([401, 200]);
    const ids = (await loadAll(book.db, await site())).map(({ id }) => id);
    expect([ids.includes(theirs.id), ids.includes(mine.id)]).toEqual([false, true]);
  });

  test('is not said to be out where it could not be put out', async () => {
    const third = new Browser();
    const { name, person } = kitchen.owner;
    await third.post(enrol, { by: 'manager', name, secret: ownerSecret, device: 'lost phone 3' });
    const device = (await devicesOf(book.db, await site())).find(
      (one) => one.name === 'lost phone 3',
    )?.device;
    const before = await notes();
    const [owner, told] = [book.owner(), vi.spyOn(console, 'error').mockImplementation(() => {})];
    await owner`revoke update on device from ${owner(appRole)}`;
    expect((await kitchen.tablet.post(putOut, { device })).status).toBe(500);
    await owner`grant update on device to ${owner(appRole)}`;
    await owner.end();
    told.mockRestore();
    expect(await notes()).toEqual(before);
    expect((await third.post(entries, [airReading(person)])).status).toBe(200);
  });

  test('a device that there is not is no choice', async () => {
    const answer = await kitchen.tablet.post(putOut, { device: v7() });
    expect([answer.status, problemsIn(answer)]).toEqual([422, ['not_offered']]);
  });

  test('nobody puts one out without a secret entered on this device', async () => {
    const again = new Browser();
    const { name, person } = kitchen.owner;
    await again.post(enrol, { by: 'manager', name, secret: ownerSecret, device: 'lost phone 2' });
    await kitchen.tablet.post(signOut, { person });
    const other = (await devicesOf(book.db, await site())).find((one) => one.name === 'lost phone 2');
    const answer = await kitchen.tablet.post(putOut, { device: other?.device });
    expect([answer.status, problemsIn(answer)]).toEqual([401, ['nobody_signed_in']]);
    expect((await again.post(entries, [airReading(person)])).status).toBe(200);
  });

  test('a lead who is signed in is no manager, nor is a manager who left', () => {
    const people = [
      person({ role: 'lead' }),
      person({ role: 'manager', active: false }),
      person({ role: 'manager' }),
    ];
    const written = people.map((body, n) => ({ ...draft('person', body, body.person), seq: n + 1 }));
    const found = foldKitchen(written as never, Date.now() + 1000);
    const here = (...ns: number[]) =>
      managerHere({ hands: ns.map((n) => ({ person: people[n]?.person })) } as unknown as Session, found);
    expect(here(0)).toBeUndefined();
    expect(here(1)).toBeUndefined();
    expect(here(0, 1, 2)).toBe(people[2]?.person);
  });
});
