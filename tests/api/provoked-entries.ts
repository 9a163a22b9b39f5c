import { v7 } from 'uuid';
import { POST as entries } from '#app/api/entries/route.ts';
import { POST as secret } from '#app/api/secret/route.ts';
import { POST as signIn } from '#app/api/sign-in/route.ts';
import type { Body, Draft } from '#shared/entries/entry.ts';
import type { Problem } from '#shared/problem.ts';
import type { FreshBook } from '../db/fresh-book.ts';
import type { Answer } from './browser.ts';
import { airReading, cabinet, draft, newKitchen, person, site } from './kitchen.ts';

/** An input that provokes a problem: what someone did, in words, and the problems that it was answered with. */
export type Provocation = { did: string; problems: Problem[] };

type Book = FreshBook['db'];
export type Place = Awaited<ReturnType<typeof placeFor>>;

export async function placeFor(db: Book) {
  const lead = person({ name: 'Juno Castell', initials: 'JC', role: 'lead' });
  const cook = person({ name: 'Piet Amaro', initials: 'PA', role: 'crew' });
  const reader = person({ name: 'An Inspector', initials: 'AI', role: 'reader' });
  const probe = v7();
  const food = v7();
  const starting = [
    ...[lead, cook, reader].map((body) => ({ kind: 'person' as const, body })),
    {
      kind: 'probe' as const,
      body: {
        probe,
        name: 'red',
        colour: 'red' as const,
        type: null,
        scale: 'degF' as const,
        unit: 'degF' as const,
        step: 0.1,
        accuracy: 2,
        home: null,
        active: true,
      },
    },
    {
      kind: 'food' as const,
      body: {
        food,
        name: 'Brisket',
        name_es: null,
        class: 'intact_roast' as const,
        counted: 'pieces' as const,
        sealed_commercial: false,
        note: null,
        active: true,
      },
    },
  ];
  const { owner, tablet } = await newKitchen(starting);
  const by = owner.person;
  const [batch, sold] = [v7(), v7()];
  const made = (id: string, name: string): Draft =>
    draft('batch', { batch: id, name, food, pieces: 3, made: 'new', source: [], note: null }, by, ago(60));
  const put = (id: string, pieces: number[] | null, step: 'hot_hold' | 'gone', minutes: number): Draft =>
    draft('step', { batch: id, pieces, step, equipment: cabinet, details: {} }, by, ago(minutes));
  await tablet.post(entries, [
    made(batch, 'BR-A'),
    made(sold, 'BR-B'),
    put(batch, null, 'hot_hold', 50),
    put(sold, null, 'hot_hold', 50),
    put(batch, [3], 'gone', 20),
    put(sold, null, 'gone', 20),
  ]);
  await tablet.post(secret, setOf(lead.person, '580392'));
  await tablet.post(secret, setOf(cook.person, '739164'));
  return { db, tablet, owner, lead, cook, reader, probe, food, batch, sold };
}

const ago = (minutes: number): number => Date.now() - minutes * 60_000;
export const setOf = (who: string, chosen: string, old: string | null = null) => ({
  change: 'set',
  person: who,
  secret: chosen,
  old,
  invitation: null,
});

/** The problems of an answer: of the request as a whole, or of the entries that were refused. */
export function problemsOfAnswer({ json }: Answer): Problem[] {
  const receipts = (json.receipts ?? []) as { problems: Problem[] }[];
  return [...((json.problems ?? []) as Problem[]), ...receipts.flatMap(({ problems }) => problems)];
}

const look = (place: Place, more: object, at = ago(1)): Draft => {
  const one = airReading(place.owner.person, undefined, at);
  return { ...one, body: { ...one.body, batch: place.batch, piece: 1, spot: 'edge', ...more } } as Draft;
};
const decision = (place: Place, by: string, more: object = {}): Draft =>
  draft(
    'decision',
    {
      deviation: `${place.batch}/1/x/at_readings/y`,
      batch: place.batch,
      pieces: [1],
      decision: 'discard',
      confirms: null,
      decided_by: by,
      decided_via: 'own_duty',
      reason: 'too long under the limit',
      ...more,
    },
    by,
  );

/** What single entries are refused for. */
function entryCases(place: Place): [did: string, sent: unknown][] {
  const { owner, lead, cook, reader, probe, sold, food } = place;
  const by = owner.person;
  const one = airReading(by);
  const amend = (target: string, field: 'value' | 'piece', to: string) =>
    draft('amendment', { target, field, from: '1', to, reason: 'mistyped' }, by);
  return [
    ['an entry of a kind that there is not', { ...one, kind: 'weather' }],
    ['an entry that only its own screen writes', draft('secret_reset', { person: cook.person }, by)],
    ['half of a sign in a note', note(by, 'smoke \ud83d')],
    ['an entry of somebody who is not here', airReading(v7())],
    ['an entry of a reader', airReading(reader.person)],
    ['a look ten minutes ahead of the server’s clock', airReading(by, undefined, ago(-10))],
    ['a note ten minutes ahead of the server’s clock', { ...note(by, 'rain'), at: iso(ago(-10)) }],
    ['a look at a cabinet that the kitchen does not have', look(place, { equipment: v7() })],
    ['a look with a thermometer that the kitchen does not have', look(place, { probe: v7() })],
    ['a batch of a food that the kitchen does not have', batchOf(by, v7())],
    ['a batch cut from one that is not there', batchOf(by, food, v7())],
    ['a look at a batch that is not there', look(place, { batch: v7() })],
    ['a look at piece 9 of 3', look(place, { piece: 9 })],
    ['a look at a batch that was gone', look(place, { batch: sold })],
    ['a look at a piece that was gone', look(place, { piece: 3 })],
    [
      'degrees Celsius with a thermometer that shows Fahrenheit',
      look(place, { probe, unit: 'degC', value: 65 }),
    ],
    ['an air reading of no place', { ...one, body: { ...one.body, equipment: null } }],
    ['a look at the thin end of nothing', { ...one, body: { ...one.body, spot: 'edge' } }],
    ['a correction of an entry that is not there', amend(v7(), 'value', '140')],
    ['a decision about a deviation that is not there', decision(place, by, { deviation: v7() })],
    ['a decision by somebody whom nobody knows', decision(place, by, { decided_by: v7() })],
    [
      'a release by a lead where managers decide',
      decision(place, by, { decision: 'release', decided_by: lead.person }),
    ],
    [
      'a decision by phone confirmed by somebody else',
      decision(place, by, { decision: 'confirm', confirms: v7(), decided_by: lead.person }),
    ],
    ['a person written by a cook', draft('person', { ...cook, title: 'chief' }, cook.person)],
    ['an owner made by a lead', draft('person', { ...lead, role: 'owner' }, lead.person)],
    ['the last owner written as gone', draft('person', { ...owner, active: false }, by)],
  ];
}

const iso = (ms: number): string => new Date(ms).toISOString();
const note = (by: string, text: string): Draft =>
  draft(
    'note',
    {
      text,
      lang: 'en',
      batch: null,
      piece: null,
      equipment: null,
      probe: null,
      round: null,
      could_not: null,
    },
    by,
  );
const batchOf = (by: string, food: string, from: string | null = null): Draft =>
  draft(
    'batch',
    {
      batch: v7(),
      name: 'BR-C',
      food,
      pieces: 3,
      made: from === null ? 'new' : 'cut',
      source: from === null ? [] : [{ batch: from, pieces: null, words: null }],
      note: null,
    },
    by,
  );

export async function fromEntries(place: Place): Promise<Provocation[]> {
  const { tablet, owner, lead } = place;
  await tablet.post(signIn, { person: lead.person, secret: '580392' });
  const found: Provocation[] = [];
  for (const [did, sent] of entryCases(place)) {
    found.push({ did, problems: problemsOfAnswer(await tablet.post(entries, [sent])) });
  }
  const [first, twin] = [airReading(owner.person, 150), airReading(owner.person, 150)];
  const twice = await tablet.post(entries, [first, twin]);
  found.push({ did: 'the same look twice within a minute', problems: problemsOfAnswer(twice) });
  const other = await tablet.post(entries, [{ ...airReading(owner.person), id: first.id }]);
  found.push({ did: 'another entry under an id that is taken', problems: problemsOfAnswer(other) });
  const amend = async (did: string, target: string, field: 'held_s' | 'value' | 'struck', to: string) => {
    const body = { target, field, from: '', to, reason: 'mistyped' };
    const answer = await tablet.post(entries, [draft('amendment', body, owner.person)]);
    found.push({ did, problems: problemsOfAnswer(answer) });
  };
  const remark = note(owner.person, 'wet wood tonight');
  await tablet.post(entries, [remark]);
  await amend('a correction that cannot be read', first.id, 'held_s', 'x');
  await amend('a correction of a figure of a note', remark.id, 'value', '140');
  const here = draft('person', { ...owner, title: 'pit boss' }, owner.person);
  await tablet.post(entries, [here]);
  await amend('a correction that takes somebody of the set-up back', here.id, 'struck', 'true');
  found.push(...(await fromLimits(place)));
  return found;
}

const house = { section: 'house limit', authority: null, document: null, dated: null };

/** Limits of the kitchen's own: what each of them gets wrong. */
async function fromLimits({ tablet, owner }: Place): Promise<Provocation[]> {
  const id = v7();
  const write = async (did: string, more: Partial<Body<'limits'>>): Promise<Provocation> => {
    const hotter = { hot_hold: { value: 140, unit: 'degF' as const, ...house } };
    const body = { limits: id, name: 'Ours', extends: 'fda_2022', changes: hotter, active: true, ...more };
    const answer = await tablet.post(entries, [draft('limits', body, owner.person)]);
    return { did, problems: problemsOfAnswer(answer) };
  };
  const choose = async (did: string, profile: string): Promise<Provocation> => {
    const answer = await tablet.post(entries, [draft('site', { ...site, profile }, owner.person)]);
    return { did, problems: problemsOfAnswer(answer) };
  };
  const found = [
    await choose('limits chosen that nobody made', 'moon_base'),
    await write('limits over a profile that there is not', { extends: 'moon_base' }),
    await write('limits that change nothing', { changes: {} }),
    await write('a stage changed that the profile does not have', {
      changes: { stage_2_within: { minutes: 30, ...house } },
    }),
    await write('the published figure again', {
      changes: { hot_hold: { value: 135, unit: 'degF', ...house } },
    }),
    await write('a looser figure without its document', {
      changes: { hot_hold: { value: 130, unit: 'degF', ...house } },
    }),
  ];
  await write('limits that are taken', {});
  await choose('their choice, which is taken', id);
  found.push(await write('limits in use put out of use', { active: false }));
  const before = draft('site', site, owner.person);
  await tablet.post(entries, [before]);
  await choose('limits chosen elsewhere, which is taken', 'us_ca');
  const sent = [draft('site', { ...site, name: 'Quarry Row' }, owner.person)];
  const late = await tablet.post(entries, sent, {}, `?was=${before.id}`);
  found.push({
    did: 'the kitchen saved from a page that was open while its limits were changed elsewhere',
    problems: problemsOfAnswer(late),
  });
  await choose('the published ones again, which are taken', site.profile);
  return found;
}
