import { describe, expect, test } from 'vitest';
import { foldKitchen } from '#lib/fold/kitchen.ts';
import { changedMeanwhile, standsOn } from '#lib/fold/stood-open.ts';
import type { Body, Draft, Entry } from '#shared/entries/entry.ts';
import { Weeks } from './weeks.ts';

const first = new Weeks().entries.find((entry) => entry.kind === 'site');
if (first?.kind !== 'site') throw new Error('tests: no site');
const site: Body<'site'> = first.body;

const entry = (id: string, seq: number, body: Body<'site'>, by = 'ana'): Entry =>
  ({ ...first, id, seq, at: `2026-10-0${seq}T12:00:00Z`, by, body }) as Entry;
const ana = {
  ...first,
  id: 'person-1',
  kind: 'person',
  seq: 1,
  body: { person: 'ana', name: 'Ana Ruiz', initials: 'AR', role: 'manager' },
} as unknown as Entry;
const draft = (body: Body<'site'>): Draft => ({ ...first, id: 'draft', body }) as unknown as Draft;

const told = (entries: Entry[], was: string[], meant: Body<'site'>) =>
  changedMeanwhile(
    draft(meant),
    new Set(was),
    entries,
    foldKitchen([ana, ...entries], Date.UTC(2027, 0)),
  ).map(({ field, values }) => [field, values.by, values.now]);

describe('a form of the kitchen that stood open', () => {
  const seen = entry('a', 2, site);
  const changed = entry('b', 3, { ...site, profile: 'us_ca' });

  test('is refused where it would change back what another hand changed, by name', () => {
    expect(told([seen, changed], ['a'], { ...site, name: 'New name' })).toEqual([
      ['body.profile', 'Ana Ruiz', 'California'],
    ]);
  });
  test('is taken when it says the new choice, or nothing changed, or it stands on the last entry', () => {
    expect(told([seen, changed], ['a'], { ...site, name: 'New name', profile: 'us_ca' })).toEqual([]);
    expect(told([seen], ['a'], { ...site, profile: 'us_tx' })).toEqual([]);
    expect(told([seen, changed], ['b'], { ...site, profile: 'us_tx' })).toEqual([]);
    expect(told([seen, entry('b', 3, site)], ['a'], { ...site, name: 'New name' })).toEqual([]);
  });
  test('is refused too where both changed the same to something else', () => {
    expect(told([seen, changed], ['a'], { ...site, profile: 'us_tx' })).toHaveLength(1);
  });
  test('who says nothing of what was seen is asked nothing', () => {
    expect(told([seen, changed], [], { ...site, name: 'New name' })).toEqual([]);
  });
  test('a value too long to say is left out of the words', () => {
    const house = { ...site.house, decides: 'lead' as const };
    expect(told([seen, entry('b', 3, { ...site, house })], ['a'], { ...site, name: 'x' })).toEqual([
      ['body.house', 'Ana Ruiz', 'none'],
    ]);
  });
  test('stands on the last entry of the site', () => {
    expect(standsOn('site', 'site', [changed, seen])).toBe('b');
    expect(standsOn('site', 'site', [ana])).toBeNull();
  });
});

describe('a form of one thing of the set-up that stood open', () => {
  const weeks = new Weeks();
  const oven = weeks.entries.find((one) => one.kind === 'equipment' && one.body.equipment === 'oven');
  const other = weeks.entries.find((one) => one.kind === 'equipment' && one.body.equipment === 'walkin');
  if (oven?.kind !== 'equipment' || other?.kind !== 'equipment') throw new Error('tests: no oven');
  const later = (change: Partial<Body<'equipment'>>, of = oven): Entry =>
    ({ ...of, id: `${of.id}-later`, seq: 90, by: 'ana', body: { ...of.body, ...change } }) as Entry;
  const toldOf = (now: Entry, meant: Partial<Body<'equipment'>>) => {
    const entries = [ana, ...weeks.entries, now];
    const sent = { ...oven, id: 'draft', body: { ...oven.body, ...meant } } as unknown as Draft;
    return changedMeanwhile(
      sent,
      new Set([standsOn('equipment', 'oven', weeks.entries) ?? '']),
      entries,
      foldKitchen(entries, Date.UTC(2027, 0)),
    ).map(({ field, values }) => [field, values.by, values.now]);
  };

  test('is refused by member, with the hand; a choice of the program is not said by its code', () => {
    expect(toldOf(later({ name: 'Oven by the door', kind: 'range' }), { note: 'x' })).toEqual([
      ['body.name', 'Ana Ruiz', 'Oven by the door'],
      ['body.kind', 'Ana Ruiz', 'none'],
    ]);
    expect(toldOf(later({ order: 7 }), { note: 'x' })).toEqual([['body.order', 'Ana Ruiz', '7']]);
  });
  test('is no concern of another thing of the same kind', () => {
    expect(toldOf(later({ name: 'Big walk-in' }, other), { note: 'x' })).toEqual([]);
  });
  test.each(['person', 'probe', 'food', 'plan', 'limits'] as const)('%s too, by its own name', (kind) => {
    const of = (id: string, note: string): Entry =>
      ({ ...oven, id, seq: id === 'a' ? 50 : 60, kind, by: 'ana', body: { [kind]: 'one', note } }) as never;
    const sent = { ...of('draft', 'seen'), kind } as unknown as Draft;
    const [problem] = changedMeanwhile(
      sent,
      new Set(['a']),
      [of('a', 'seen'), of('b', 'new')],
      foldKitchen([ana], Date.UTC(2027, 0)),
    );
    expect(problem).toMatchObject({ field: 'body.note', values: { by: 'Ana Ruiz', now: 'new' } });
  });
});
