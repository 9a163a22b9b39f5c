import { v7 } from 'uuid';
import { vi } from 'vitest';
import * as z from 'zod';
import { POST as confirmSecret } from '#app/api/confirm-secret/route.ts';
import { POST as signRoute } from '#app/api/day/[day]/sign/route.ts';
import { POST as enrol } from '#app/api/enrol/route.ts';
import { POST as entries } from '#app/api/entries/route.ts';
import { POST as firstRunRoute } from '#app/api/first-run/route.ts';
import { POST as hand } from '#app/api/hand/route.ts';
import { POST as secret } from '#app/api/secret/route.ts';
import { POST as signIn } from '#app/api/sign-in/route.ts';
import { POST as signOut } from '#app/api/sign-out/route.ts';
import { door } from '#app/server/door.ts';
import { fillDemo } from '#db/demo/fill.ts';
import { loadDay } from '#db/load-day.ts';
import { sha256 } from '#db/sha256.ts';
import { signDay } from '#db/sign.ts';
import { canonicalDay } from '#lib/sheet/canonical-day.ts';
import { problemsOf } from '#shared/entries/issues.ts';
import { canonicalText } from '#shared/envelope.ts';
import { Browser } from './browser.ts';
import { airReading, draft, firstRun, ownerSecret, person } from './kitchen.ts';
import { type Place, type Provocation, problemsOfAnswer, setOf } from './provoked-entries.ts';

/** Values that a schema refuses, one a kind of fault. */
const typed: readonly [did: string, schema: z.ZodType, value: unknown][] = [
  ['a field left empty', z.string().min(1), ''],
  ['a word of two letters where three are the least', z.string().min(3), 'ab'],
  ['a text over its length', z.string().max(4), 'abcde'],
  ['no piece where one is the least', z.array(z.string()).min(1), []],
  ['three where two are the most', z.array(z.string()).max(2), ['a', 'b', 'c']],
  ['2 where 5 is the least', z.number().min(5), 2],
  ['9 where 7 is the most', z.number().max(7), 9],
  ['a word for a figure', z.number(), 'hot'],
  ['half a piece', z.int(), 2.5],
  ['a time without its offset', z.iso.datetime({ offset: true }), '2026-10-17 03:12'],
  ['the 31st of November', z.iso.date(), '2026-11-31'],
  ['a name for an id', z.uuid(), 'cabinet 1'],
  ['a time of day in another form', z.string().regex(/^\d\d:\d\d$/), '4 am'],
  ['a choice that is not offered', z.enum(['day', 'pit']), 'noon'],
  ['a field that there is not', z.strictObject({}), { site: 'elsewhere' }],
  ['a word where fields are expected', z.object({}), 'a'],
];

export const fromSchemas = (): Provocation[] =>
  typed.map(([did, schema, value]) => {
    const parsed = schema.safeParse(value);
    return { did, problems: parsed.success ? [] : problemsOf(parsed.error, value, 'field') };
  });

/** A look with parts within parts. */
const nested = (levels: number): object => (levels === 0 ? {} : { body: nested(levels - 1) });
const wide = (fields: number): object =>
  Object.fromEntries(Array.from({ length: fields }, (_, n) => [`field_${n}`, n]));

/** Requests as a whole. */
export async function fromRequests({ tablet, owner }: Place): Promise<Provocation[]> {
  const one = airReading(owner.person);
  const absent = person({ name: 'Ottilie Brandt', initials: 'OB', role: 'crew' });
  await tablet.post(entries, [draft('person', absent, owner.person)]);
  const unsigned = airReading(absent.person);
  const many = Array.from({ length: 501 }, () => one);
  const failing = (error: object) =>
    door(async () => {
      throw error;
    });
  const answers: [string, Promise<Parameters<typeof problemsOfAnswer>[0]>][] = [
    [
      'a look of somebody who was not signed in when it was written',
      tablet.post(entries, [unsigned], {}, `?waited=${unsigned.id}`),
    ],
    ['what is no JSON', tablet.send(entries, '[{')],
    ['one entry that stands in no list', tablet.post(entries, one)],
    ['501 entries at once', tablet.post(entries, many)],
    ['a list that is packed', tablet.send(entries, '[]', { 'content-encoding': 'gzip' })],
    ['a form in place of JSON', tablet.send(entries, 'a=b', { 'content-type': 'text/plain' })],
    [
      'words in Latin-1',
      tablet.send(entries, '[]', { 'content-type': 'application/json; charset=iso-8859-1' }),
    ],
    ['an entry nine levels deep', tablet.post(entries, [nested(9)])],
    ['an entry with a thousand fields', tablet.post(entries, [wide(1000)])],
    ['more than a megabyte', tablet.send(entries, 'x'.repeat(1024 * 1024 + 1))],
    ['a page of another origin', tablet.post(entries, [one], { origin: 'http://elsewhere.example' })],
    ['a device that nobody let in', new Browser().post(entries, [one])],
    ['an entry while the database is away', tablet.post(failing({ code: 'ECONNREFUSED' }), [])],
    ['an entry while the disk is full', tablet.post(failing({ cause: { code: '53100' } }), [])],
    ['an entry at a fault of the program', tablet.post(failing(new TypeError('provoked')), [])],
    ['the signature under a day that there is not', tablet.post(signRoute, {})],
    ['a second first run', tablet.post(firstRunRoute, firstRun(person()))],
    ['a first run by a cook', tablet.post(firstRunRoute, firstRun(person({ role: 'crew' })))],
  ];
  const quiet = vi.spyOn(console, 'error').mockImplementation(() => {});
  const found = [];
  for (const [did, answer] of answers) found.push({ did, problems: problemsOfAnswer(await answer) });
  quiet.mockRestore();
  return found;
}

/** Secrets, hands and devices. Ends with nobody signed in. */
export async function fromSecrets(place: Place): Promise<Provocation[]> {
  const { tablet, owner, lead, cook, reader } = place;
  const night = v7();
  const found: Provocation[] = [];
  const tried = async (did: string, route: typeof hand, body: unknown, browser = tablet) =>
    found.push({ did, problems: problemsOfAnswer(await browser.post(route, body)) });
  const wrong = { person: cook.person, secret: '111222' };

  await tried('a hand that is not in the list', hand, { person: night });
  await tried('the hand of a reader', hand, { person: reader.person });
  await tried('a manager’s secret of seven signs', secret, setOf(owner.person, '7391645', ownerSecret));
  await tried('the secret 123456', secret, setOf(cook.person, '123456', '739164'));
  await tried('a new secret without the old one', secret, setOf(cook.person, '402917'));
  await tried('a code that nobody gave', enrol, { by: 'code', code: 'AAAAA-AAAAA', device: 'phone' });
  await tried('a manager’s name with another secret', enrol, {
    by: 'manager',
    name: owner.name,
    secret: 'not that one',
    device: 'desk',
  });
  await tried('a lead who takes the owner’s secret away', secret, {
    change: 'reset',
    person: owner.person,
    by: lead.person,
  });
  await tried('a wrong secret', signIn, wrong);
  for (let i = 0; i < 3; i += 1) await tablet.post(signIn, wrong);
  await tried('the fifth wrong secret in a row', signIn, wrong);
  await tried('the right secret after that', confirmSecret, { person: cook.person, secret: '739164' });

  await tablet.post(confirmSecret, { person: owner.person, secret: ownerSecret });
  await tablet.post(secret, { change: 'reset', person: cook.person, by: owner.person });
  await tried('a secret that was taken away', signIn, wrong);
  await tablet.post(signOut, { person: lead.person });
  const renamed = draft('person', { ...lead, title: 'days' }, lead.person);
  await tried('set-up written under a name that was only tapped', entries, [renamed]);
  const later = vi.spyOn(Date, 'now').mockReturnValue(Date.now() + 6 * 60_000);
  await tried('a secret taken away six minutes after one’s own was entered', secret, {
    change: 'reset',
    person: cook.person,
    by: owner.person,
  });
  later.mockRestore();
  await tablet.post(signOut, { person: null });
  await tried('a first secret while nobody stands by', secret, setOf(cook.person, '402917'));
  await tried('an entry while nobody is signed in', entries, [airReading(owner.person)]);
  return found;
}

/** The day's signature, on the invented night. */
export async function fromSigning({ db }: Place): Promise<Provocation[]> {
  const day = '2026-10-16';
  const { site } = await fillDemo(db, { fixed: true, now: Date.parse('2026-11-01T12:00:00-05:00') });
  const loaded = await loadDay(db, site, day);
  const people = loaded.flatMap((entry) => (entry.kind === 'person' ? [entry.body] : []));
  const whose = (role: string): string => people.find((one) => one.role === role)?.person ?? '';
  const now = Date.parse('2026-11-02T12:00:00-05:00');
  const text = canonicalText(canonicalDay(loaded, day, { knownUntil: now }));
  const seq = Math.max(...loaded.map((entry) => entry.seq));
  const writer = { site, device: v7(), knownOf: () => 'secret' as const };
  const sign = async (did: string, more: object): Promise<Provocation> => {
    const read = { hash: sha256(text), seq };
    const toSign = { day, by: whose('manager'), read, meaning: 'reviewed', openItems: [], ...more };
    const signed = await signDay(db, writer, toSign, () => now);
    return { did, problems: signed.status === 'refused' ? signed.problems : [] };
  };
  return [
    await sign('a day signed by a cook', { by: whose('crew') }),
    await sign('a day signed before it is over', { day: '2026-11-02' }),
    await sign('a day that is not the one that was read', { read: { hash: 'a'.repeat(64), seq } }),
    await sign('a day signed with nothing decided', {}),
  ];
}
