import { v7 } from 'uuid';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { deviceAndSignIns, endSignIn, enrolDevice, openSignIn, revokeDevice } from '#db/devices.ts';
import { checkSecret, clearSecret, hasSecret, setSecret } from '#db/secrets.ts';
import { clock, minutes } from './drafts.ts';
import { type FreshBook, freshBook } from './fresh-book.ts';

let book: FreshBook;
const site = v7();
beforeAll(async () => {
  book = await freshBook();
});
afterAll(() => book.close());

const check = (person: string, typed: string, now = clock) => checkSecret(book.db, site, person, typed, now);

describe('a secret', () => {
  test('is right or wrong, and a right one forgets the wrong tries', async () => {
    const person = v7();
    await setSecret(book.db, site, person, '482913', clock);
    expect(await check(person, '000000')).toEqual({ answer: 'wrong', triesLeft: 4 });
    expect(await check(person, '000001')).toEqual({ answer: 'wrong', triesLeft: 3 });
    expect(await check(person, '482913')).toEqual({ answer: 'right', mustSet: false });
    expect(await check(person, '000002')).toEqual({ answer: 'wrong', triesLeft: 4 });
  });

  test('is shut for ten minutes after five wrong tries, even for the right one', async () => {
    const person = v7();
    await setSecret(book.db, site, person, '482913', clock);
    for (let n = 0; n < 5; n += 1) await check(person, '000000');
    const untilMs = clock() + minutes(10);
    expect(await check(person, '482913')).toEqual({ answer: 'shut', untilMs });
    expect(await check(person, '482913', () => untilMs - 1)).toEqual({ answer: 'shut', untilMs });
    expect(await check(person, '000000', () => untilMs)).toEqual({ answer: 'wrong', triesLeft: 4 });
    expect(await check(person, '482913', () => untilMs)).toEqual({ answer: 'right', mustSet: false });
  });

  test('that was shut while the clock was a year ahead is not shut until then', async () => {
    const person = v7();
    await setSecret(book.db, site, person, '482913', clock);
    for (let n = 0; n < 5; n += 1) await check(person, '000000', () => clock() + 365 * 86_400_000);
    expect(await check(person, '000000')).toEqual({ answer: 'wrong', triesLeft: 4 });
    expect(await check(person, '482913')).toEqual({ answer: 'right', mustSet: false });
  });

  test('is tried five times and no more by fifty guesses at once', async () => {
    const person = v7();
    await setSecret(book.db, site, person, '482913', clock);
    const answers = await Promise.all(Array.from({ length: 50 }, (_, n) => check(person, `00000${n}`)));
    expect(answers.filter(({ answer }) => answer === 'wrong')).toHaveLength(5);
    expect(answers.filter(({ answer }) => answer === 'shut')).toHaveLength(45);
  });

  test('of someone unknown, or taken away, is wrong', async () => {
    const person = v7();
    expect(await check(person, '482913')).toMatchObject({ answer: 'wrong' });
    await setSecret(book.db, site, person, '482913', clock);
    await clearSecret(book.db, site, person);
    expect(await hasSecret(book.db, site, person)).toBe(false);
    expect(await check(person, '482913')).toMatchObject({ answer: 'wrong' });
  });

  test('is nowhere in the database as it was typed', async () => {
    const person = v7();
    await setSecret(book.db, site, person, 'lantern-ditch-77', clock);
    const rows = await book.db.sql`select hash from secret where person = ${person}`;
    expect(rows[0]?.hash).toMatch(/^\$argon2id\$/);
    expect(JSON.stringify(rows)).not.toContain('lantern-ditch-77');
  });
});

describe('a device', () => {
  test('is known by its token, by no other, and no more once it is shut out (demand:30)', async () => {
    const device = { site, device: v7(), name: 'pit tablet' };
    const token = await enrolDevice(book.db, device, clock);
    const other = await enrolDevice(book.db, { ...device, device: v7() }, clock);
    expect(await deviceAndSignIns(book.db, token)).toEqual({ device, open: [] });
    const swapped = `${token.split('.').slice(0, 2).join('.')}.${other.split('.')[2]}`;
    for (const bad of [swapped, `${token}x`, '', '..', `x.${token}`]) {
      expect(await deviceAndSignIns(book.db, bad)).toBeNull();
    }
    await revokeDevice(book.db, site, device.device, clock);
    expect(await deviceAndSignIns(book.db, token)).toBeNull();
  });

  test('holds one open sign-in a person, and ends one or all', async () => {
    const where = { site, device: v7() };
    const token = await enrolDevice(book.db, { ...where, name: 'pit tablet' }, clock);
    const open = async () =>
      (await deviceAndSignIns(book.db, token))?.open.map((signedIn) => signedIn.person);
    const [first, second] = [v7(), v7()];
    const now = (n: number) => () => clock() + minutes(n);
    await openSignIn(book.db, { ...where, person: first, how: 'secret' }, now(0));
    await openSignIn(book.db, { ...where, person: second, how: 'secret' }, now(1));
    await openSignIn(book.db, { ...where, person: first, how: 'secret' }, now(2));
    expect(await open()).toEqual([second, first]);
    await endSignIn(book.db, site, where.device, second, now(3));
    expect(await open()).toEqual([first]);
    await endSignIn(book.db, site, where.device, null, now(4));
    expect(await open()).toEqual([]);
  });
});
