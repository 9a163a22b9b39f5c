import { createTranslator } from 'use-intl/core';
import { describe, expect, test } from 'vitest';
import { demoDrafts } from '#db/demo/demo-drafts.ts';
import nightFile from '#db/demo/night.json' with { type: 'json' };
import type { Night } from '#db/demo/night.ts';
import { type Body, type Kind, kinds } from '#shared/entries/entry.ts';
import { entryLine, type Sayer } from '#shared/entries/line.ts';
import { versions } from '#shared/entries/versions.ts';
import { type Language, messages } from '#shared/words/messages.ts';
import { draft, person } from './kitchen.ts';

const faults: string[] = [];

/** Says messages as a page does; what cannot be said is a fault. */
function sayer(language: Language, names: ReadonlyMap<string, string>): Sayer {
  const translator = createTranslator({
    locale: language,
    messages: messages[language] as Record<string, object>,
    timeZone: 'UTC',
    onError: (error) => faults.push(error.message),
  }) as unknown as Sayer['message'];
  return { message: translator, name: (id) => names.get(id) ?? null };
}

const { setUp, events } = demoDrafts(nightFile as unknown as Night, {
  shiftDays: 0,
  newId: (() => {
    let made = 0;
    return () => `00000000-0000-7000-8000-${String(made++).padStart(12, '0')}`;
  })(),
});

const owner = person();
const secretBody = { person: owner.person };
/** Kinds that the demo night has none of. */
const others = [
  draft('secret_set', secretBody, owner.person),
  draft('secret_reset', secretBody, owner.person),
  draft(
    'decision',
    {
      deviation: 'a/1/b/at_readings/c',
      batch: null,
      pieces: [7],
      decision: 'set_apart',
      confirms: null,
      decided_by: owner.person,
      decided_via: 'phone',
      reason: 'asked to wait',
    },
    owner.person,
  ),
  draft(
    'limits',
    {
      limits: owner.person,
      name: 'Ours',
      extends: 'fda_2022',
      changes: {
        hot_hold: {
          value: 140,
          unit: 'degF',
          section: 'house limit',
          authority: null,
          document: null,
          dated: null,
        },
      },
      active: true,
    },
    owner.person,
  ),
  ...[-1.5, null].map((correction) =>
    draft(
      'probe_adjusted',
      { probe: owner.person, correction, unit: 'degF', reason: 'ice and boiling water of today' },
      owner.person,
    ),
  ),
  draft('device_enrolled', { device: owner.person, name: 'pit tablet' }, owner.person),
  draft('retention', { years: 5, because: 'house rule' }, owner.person),
  draft(
    'erasure',
    {
      before: '2024-01-01',
      kept_years: 2,
      from: '2023-03-10',
      to: '2023-03-10',
      ranges: [[3, 9]],
      count: 7,
      bytes: 2000,
      digest: 'a'.repeat(64),
      sheets: [],
    },
    owner.person,
  ),
];
const all = [...setUp, ...events, ...others];

const names = new Map<string, string>([[owner.person, owner.name]]);
for (const { kind, body } of all) {
  if (kind === 'person') names.set((body as Body<'person'>).person, (body as Body<'person'>).name);
  if (kind === 'batch') names.set((body as Body<'batch'>).batch, (body as Body<'batch'>).name);
  if (kind === 'equipment')
    names.set((body as Body<'equipment'>).equipment, (body as Body<'equipment'>).name);
  if (kind === 'probe') names.set((body as Body<'probe'>).probe, (body as Body<'probe'>).name);
  if (kind === 'food') names.set((body as Body<'food'>).food, (body as Body<'food'>).name);
}

describe.each(['en', 'es'] as const)('each kind of entry in one line (%s)', (language) => {
  test.each(Object.keys(kinds) as Kind[])('%s', (kind) => {
    const some = all.filter((entry) => entry.kind === kind);
    expect(some.length).toBeGreaterThan(0);
    for (const entry of some) {
      faults.length = 0;
      const line = entryLine(entry, sayer(language, names));
      expect(faults, line).toEqual([]);
      expect(line).not.toMatch(/[{}]|undefined|\bnone\b|entry\.|common\./);
      expect(line.length).toBeGreaterThan(10);
    }
  });
});

test('a reading says who read what, where, with which thermometer (demand:3 demand:4 demand:5)', () => {
  const line = entryLine(
    {
      kind: 'reading',
      by: 'a',
      body: {
        batch: '00000000-0000-7000-8000-0000000000b1',
        piece: 3,
        equipment: '00000000-0000-7000-8000-0000000000c1',
        spot: 'edge',
        typed: '158.0',
        value: 158,
        unit: 'degF',
        probe: '00000000-0000-7000-8000-0000000000d1',
        held_s: null,
        round: null,
        source: 'hand',
        correction: null,
        late_reason: null,
      },
    },
    sayer(
      'en',
      new Map([
        ['a', 'Piet Amaro'],
        ['00000000-0000-7000-8000-0000000000b1', 'BR-A'],
        ['00000000-0000-7000-8000-0000000000c1', 'Cabinet 1'],
        ['00000000-0000-7000-8000-0000000000d1', 'red'],
      ]),
    ),
  );
  expect(line).toBe('Piet Amaro read 158.0 °F at thin end of BR-A, piece 3, Cabinet 1, thermometer red');
});

test('a phone writes each kind in the version that the schema has', () => {
  for (const [kind, { version }] of Object.entries(kinds)) expect(versions[kind as Kind]).toBe(version);
  expect(Object.keys(versions).sort()).toEqual(Object.keys(kinds).sort());
});
