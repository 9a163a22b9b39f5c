import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { POST as confirmSecret } from '#app/api/confirm-secret/route.ts';
import { POST as enrol } from '#app/api/enrol/route.ts';
import { POST as entriesRoute } from '#app/api/entries/route.ts';
import { POST as hand } from '#app/api/hand/route.ts';
import { POST as secret } from '#app/api/secret/route.ts';
import { POST as signIn } from '#app/api/sign-in/route.ts';
import { POST as signOut } from '#app/api/sign-out/route.ts';
import { codeNow } from '#app/server/code.ts';
import { listSites, loadAll } from '#db/load.ts';
import { sealKey } from '#db/seal.ts';
import type { Receipt } from '#shared/receipt.ts';
import { Browser, problemsIn } from '../api/browser.ts';
import { airReading, draft, newKitchen, ownerSecret, person, routesOnFreshBook } from '../api/kitchen.ts';
import type { FreshBook } from '../db/fresh-book.ts';

let book: FreshBook;
let site: string;
let tablet: Browser;
const cook = person({ name: 'Piet Amaro', initials: 'PA', role: 'crew', language: 'es' });
const lead = person({ name: 'Juno Castell', initials: 'JC', role: 'lead' });
const night = person({ name: 'Sil Varga', initials: 'SV', role: 'crew' });
const reader = person({ name: 'An Inspector', initials: 'AI', role: 'reader' });
let owner: ReturnType<typeof person>;
const cookSecret = '739164';
const leadSecret = '580392';

beforeAll(async () => {
  book = await routesOnFreshBook();
  const people = [cook, lead, night, reader].map((body) => ({ kind: 'person' as const, body }));
  ({ owner, tablet } = await newKitchen(people));
  site = (await listSites(book.db))[0]?.site ?? '';
});
afterAll(() => book.close());

const ledger = () => loadAll(book.db, site);
const kindsOf = async (kind: string) => (await ledger()).filter((entry) => entry.kind === kind);
const first = (who: { person: string }, chosen: string) => ({
  change: 'set',
  person: who.person,
  secret: chosen,
  old: null,
  invitation: null,
});
const receipt = async (answer: Promise<{ json: Record<string, unknown> }>): Promise<Receipt | undefined> =>
  ((await answer).json.receipts as Receipt[] | undefined)?.[0];
const knownNow = async (by: string) => (await receipt(tablet.post(entriesRoute, [airReading(by)])))?.known;

describe('a first secret', () => {
  test('is set while someone who may let others in stands by, and that one answers for it in the book', async () => {
    const answer = await tablet.post(secret, first(cook, cookSecret));
    expect(answer.status).toBe(200);
    const entry = (await kindsOf('secret_set')).at(-1);
    expect(entry).toMatchObject({ by: owner.person, known: 'secret', body: { person: cook.person } });
    expect((await tablet.post(secret, first(lead, leadSecret))).status).toBe(200);
  });

  test('of crew has six signs or more, of a manager eight, and none that anyone would try first', async () => {
    expect(problemsIn(await tablet.post(secret, first(night, '73916')))).toEqual(['too_short']);
    expect(problemsIn(await tablet.post(secret, first(night, '000000')))).toEqual(['secret_too_plain']);
    expect(problemsIn(await tablet.post(secret, first(night, '654321')))).toEqual(['secret_too_plain']);
    const change = {
      change: 'set',
      person: owner.person,
      secret: '7391645',
      old: ownerSecret,
      invitation: null,
    };
    expect(problemsIn(await tablet.post(secret, change))).toEqual(['secret_too_short']);
  });

  test('is not set by somebody who merely holds the tablet', async () => {
    await tablet.post(signOut, { person: null });
    const answer = await tablet.post(secret, first(night, '918273'));
    expect(answer.status).toBe(403);
    expect(problemsIn(answer)).toEqual(['nobody_stands_by']);
    await tablet.post(signIn, { person: cook.person, secret: cookSecret });
    expect(problemsIn(await tablet.post(secret, first(night, '918273')))).toEqual(['nobody_stands_by']);
  });
});

describe('a shift on a shared tablet', () => {
  test('several hands are signed in at once, and each entry says how its writer was known', async () => {
    expect(await knownNow(cook.person)).toBe('secret');
    expect(await knownNow(lead.person)).toBe('tap');
    await tablet.post(signIn, { person: lead.person, secret: leadSecret });
    expect(await knownNow(cook.person)).toBe('secret');
    expect(await knownNow(lead.person)).toBe('secret');
  });

  test('switching the hand is one call without a secret, and the tablet speaks that hand’s language', async () => {
    const answer = await tablet.post(hand, { person: cook.person });
    expect(answer.json).toEqual({ person: cook.person, known: 'secret' });
    expect(tablet.jar.get('hand')).toBe(cook.person);
    expect(tablet.jar.get('language')).toBe('es');
    await tablet.post(hand, { person: lead.person });
    expect(tablet.jar.get('language')).toBe('en');
  });

  test('a reader and a stranger are no hands', async () => {
    expect(problemsIn(await tablet.post(hand, { person: reader.person }))).toEqual(['reader_writes_nothing']);
    expect(problemsIn(await tablet.post(hand, { person: person().person }))).toEqual(['not_in_people']);
  });

  test('whoever signs out is known by a tap only, and when all have, nothing is written', async () => {
    await tablet.post(signOut, { person: cook.person });
    expect(await knownNow(cook.person)).toBe('tap');
    await tablet.post(signOut, { person: null });
    const answer = await tablet.post(entriesRoute, [airReading(cook.person)]);
    expect(answer.status).toBe(401);
    expect(problemsIn(answer)).toEqual(['nobody_signed_in']);
  });

  test('a sign-in ends after four hours in which its person wrote nothing, and after fourteen whatever was written', async () => {
    await tablet.post(signIn, { person: cook.person, secret: cookSecret });
    const start = Date.now();
    try {
      vi.useFakeTimers({ toFake: ['Date'], now: start + 4 * 3_600_000 - 60_000 });
      expect(await knownNow(cook.person)).toBe('secret');
      vi.setSystemTime(start + 7 * 3_600_000);
      expect(await knownNow(cook.person)).toBe('secret');
      vi.setSystemTime(start + 10.5 * 3_600_000);
      expect(await knownNow(cook.person)).toBe('secret');
      vi.setSystemTime(start + 14 * 3_600_000 + 60_000);
      expect(problemsIn(await tablet.post(entriesRoute, [airReading(cook.person)]))).toEqual([
        'nobody_signed_in',
      ]);
    } finally {
      vi.useRealTimers();
    }
  });
});

describe('decisions and set-up', () => {
  const decide = (by: string) =>
    draft(
      'decision',
      {
        deviation: 'a/b/c/d/e',
        batch: null,
        pieces: null,
        decision: 'discard',
        confirms: null,
        decided_by: by,
        decided_via: 'own_duty',
        reason: 'under the limit too long',
      },
      by,
    );

  test('a decision asks for the secret again, and takes it for five minutes', async () => {
    await tablet.post(signIn, { person: owner.person, secret: ownerSecret });
    const start = Date.now();
    try {
      vi.useFakeTimers({ toFake: ['Date'], now: start + 6 * 60_000 });
      const tapped = await receipt(tablet.post(entriesRoute, [decide(owner.person)]));
      expect(tapped?.problem?.problem).toBe('secret_again');
      await tablet.post(confirmSecret, { person: owner.person, secret: ownerSecret });
      const confirmed = await receipt(tablet.post(entriesRoute, [decide(owner.person)]));
      expect(confirmed?.problem?.problem).not.toBe('secret_again');
      vi.setSystemTime(start + 12 * 60_000);
      const late = await receipt(tablet.post(entriesRoute, [decide(owner.person)]));
      expect(late?.problem?.problem).toBe('secret_again');
    } finally {
      vi.useRealTimers();
    }
  });

  test('nobody makes themself or another more than they are (demand:27)', async () => {
    await tablet.post(signIn, { person: lead.person, secret: leadSecret });
    await tablet.post(signIn, { person: cook.person, secret: cookSecret });
    const made = (by: string, body: typeof cook) =>
      receipt(tablet.post(entriesRoute, [draft('person', body, by)]));
    expect((await made(cook.person, { ...cook, role: 'manager' }))?.problem?.problem).toBe(
      'set_up_not_yours',
    );
    expect((await made(lead.person, { ...lead, role: 'owner' }))?.problem?.problem).toBe('role_above_yours');
    expect((await made(lead.person, { ...owner, active: false }))?.problem?.problem).toBe('role_above_yours');
    expect((await made(owner.person, { ...owner, role: 'crew' }))?.problem?.problem).toBe('last_manager');
    expect((await made(lead.person, { ...night, title: 'night cook' }))?.problem).toBeNull();
  });

  test('a name that was only tapped changes no set-up', async () => {
    await tablet.post(signOut, { person: lead.person });
    const [entry] = [draft('person', { ...night, title: 'pit, night' }, lead.person)];
    const answer = await receipt(tablet.post(entriesRoute, [entry]));
    expect(answer?.problem?.problem).toBe('secret_this_shift');
  });
});

describe('a forgotten secret', () => {
  test('is taken away by a lead who enters their own again; the book says so, and the old one opens nothing', async () => {
    const reset = { change: 'reset', person: cook.person, by: lead.person };
    expect(problemsIn(await tablet.post(secret, reset))).toEqual(['secret_again']);
    await tablet.post(confirmSecret, { person: lead.person, secret: leadSecret });
    expect((await tablet.post(secret, reset)).status).toBe(200);
    const entry = (await kindsOf('secret_reset')).at(-1);
    expect(entry).toMatchObject({ by: lead.person, known: 'secret', body: { person: cook.person } });
    expect(problemsIn(await tablet.post(signIn, { person: cook.person, secret: cookSecret }))).toEqual([
      'no_secret_yet',
    ]);
    expect(await knownNow(cook.person)).toBe('tap');
    await tablet.post(secret, first(cook, cookSecret));
  });

  test('of somebody above is not a lead’s to take', async () => {
    const reset = { change: 'reset', person: owner.person, by: lead.person };
    expect(problemsIn(await tablet.post(secret, reset))).toEqual(['reset_not_yours']);
  });
});

describe('a new device', () => {
  test('comes in by a code of the last minutes, and the book says under whose name', async () => {
    const about = { what: 'device', site, by: lead.person } as const;
    const { code } = codeNow(await sealKey(book.db), about, Date.now());
    const phone = new Browser();
    const answer = await phone.post(enrol, { by: 'code', code: code.toLowerCase(), device: 'Piet’s phone' });
    expect(answer).toEqual({ status: 200, json: { person: null } });
    expect((await kindsOf('device_enrolled')).at(-1)).toMatchObject({
      by: lead.person,
      body: { name: 'Piet’s phone' },
    });
    expect((await phone.post(signIn, { person: cook.person, secret: cookSecret })).status).toBe(200);
    const old = codeNow(await sealKey(book.db), about, Date.now() - 21 * 60_000);
    const late = await new Browser().post(enrol, { by: 'code', code: old.code, device: 'late' });
    expect(problemsIn(late)).toEqual(['code_unknown']);
  });

  test('an invitation lets in one person’s phone and sets that person’s secret, once', async () => {
    const about = { what: 'person', site, by: owner.person, person: night.person } as const;
    const { code } = codeNow(await sealKey(book.db), about, Date.now());
    const phone = new Browser();
    const answer = await phone.post(enrol, { by: 'code', code, device: 'Sil’s phone' });
    expect(answer.json).toEqual({ person: night.person });
    const set = { ...first(night, '402917'), invitation: code };
    expect((await phone.post(secret, set)).status).toBe(200);
    expect(problemsIn(await phone.post(secret, set))).toEqual(['old_secret_missing']);
    const again = await new Browser().post(enrol, { by: 'code', code, device: 'another' });
    expect(problemsIn(again)).toEqual(['code_unknown']);
  });

  test('comes in by a manager’s own secret; a wrong name and a wrong secret get the same answer', async () => {
    const wrongName = { by: 'manager', name: 'Nobody Here', secret: ownerSecret, device: 'desk' };
    const wrongSecret = { by: 'manager', name: owner.name, secret: 'not that one', device: 'desk' };
    const ofCrew = { by: 'manager', name: cook.name, secret: cookSecret, device: 'desk' };
    for (const wrong of [wrongName, wrongSecret, ofCrew]) {
      expect(problemsIn(await new Browser().post(enrol, wrong))).toEqual(['name_or_secret_wrong']);
    }
    const desk = new Browser();
    const name = ` ${owner.name.toUpperCase()} `;
    expect(
      (await desk.post(enrol, { by: 'manager', name, secret: ownerSecret, device: 'desk' })).status,
    ).toBe(200);
    expect((await receipt(desk.post(entriesRoute, [airReading(owner.person)])))?.known).toBe('secret');
  });
});

describe('tries', () => {
  test('are counted per person, across devices; then the name is shut and even the right secret opens nothing', async () => {
    const about = { what: 'device', site, by: owner.person } as const;
    const { code } = codeNow(await sealKey(book.db), about, Date.now());
    const phone = new Browser();
    await phone.post(enrol, { by: 'code', code, device: 'another phone' });
    const lefts: unknown[] = [];
    for (const browser of [tablet, phone, tablet, phone, tablet]) {
      const { json } = await browser.post(signIn, { person: cook.person, secret: '111222' });
      const [problem] = json.problems as { problem: string; values: { left?: number } }[];
      expect(problem?.problem).toBe('secret_wrong');
      lefts.push(problem?.values.left);
    }
    expect(lefts).toEqual([4, 3, 2, 1, 0]);
    const answer = await phone.post(signIn, { person: cook.person, secret: cookSecret });
    expect(problemsIn(answer)).toEqual(['secret_shut']);
    expect((await phone.post(signIn, { person: lead.person, secret: leadSecret })).status).toBe(200);
  });
});

test('no secret and no hash of one is in the ledger, in any byte of it', async () => {
  const rows = await book.db.sql`select * from ledger`;
  const hashes = await book.db.sql`select hash from secret where hash is not null`;
  const text = JSON.stringify(rows);
  expect(rows.length).toBeGreaterThan(20);
  expect(hashes.length).toBeGreaterThan(2);
  for (const typed of [ownerSecret, cookSecret, leadSecret, '402917']) expect(text).not.toContain(typed);
  for (const { hash } of hashes) expect(text).not.toContain(String(hash));
});
