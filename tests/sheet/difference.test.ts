import { describe, expect, test } from 'vitest';
import { changeWords } from '#lib/sheet/change-words.ts';
import { differences } from '#lib/sheet/difference.ts';
import { SheetNames } from '#lib/sheet/sheet-names.ts';
import { sheetWords } from '#lib/sheet/sheet-words.ts';
import type { Entry, EntryOf } from '#shared/entries/entry.ts';
import { demoEntries, idOf } from '../fold/demo-book.ts';
import { dayOfDemo, friday } from './demo-day.ts';

const signed = dayOfDemo(friday);

const added = (entry: Pick<Entry, 'kind' | 'at' | 'entered_at' | 'body'>): Entry =>
  ({
    id: '01a20000-0000-7000-8000-000000000001',
    version: 1,
    by: idOf('p03'),
    site: 'site',
    seq: demoEntries.length + 1,
    received_at: entry.entered_at,
    known: 'secret',
    device: 'device',
    ...entry,
  }) as Entry;

const bodyOf = (name: string): EntryOf<'reading'>['body'] => {
  const entry = demoEntries.find((one) => one.id === idOf(name));
  if (entry?.kind !== 'reading') throw new Error(`${name} is no reading`);
  return entry.body;
};

describe('what changed since a signature', () => {
  test('the same day has no changes', () => {
    expect(differences(signed, dayOfDemo(friday, [...demoEntries].reverse()))).toEqual([]);
  });

  test('a reading typed days later is named with its figure, its time and when it was typed', () => {
    const late = added({
      kind: 'reading',
      at: '2026-10-17T01:05:00-05:00',
      entered_at: '2026-10-18T09:40:00-05:00',
      body: { ...bodyOf('e0205'), typed: '141.2', value: 141.2 }, // piece 7 of BR-A, whose plan it also fills
    });
    const day = dayOfDemo(friday, [...demoEntries, late]);
    const changes = differences(signed, day);
    const change = changes.find((one) => one.key === 'reading_late');
    expect(change?.values).toMatchObject({ batch: 'BR-A', figure: '141.2', unit: 'degF' });
    const names = new SheetNames(day, sheetWords('en'), 'en');
    expect(change && changeWords(names, change)).toBe(
      'BR-A: 141.2 °F at 01:05 was added late, typed 18 Oct 09:40.',
    );
    expect(changes.map((one) => one.key)).toContain('late_changed');
  });

  test('a corrected figure is named with the one that stood there (demand:49)', () => {
    const correction = added({
      kind: 'amendment',
      at: '2026-10-18T09:00:00-05:00',
      entered_at: '2026-10-18T09:00:00-05:00',
      body: {
        target: idOf('e0205'),
        field: 'value',
        from: '152.9',
        to: '125.9',
        reason: 'digits turned round',
      },
    });
    const changes = differences(signed, dayOfDemo(friday, [...demoEntries, correction]));
    expect(changes.find((one) => one.key === 'reading_corrected')?.values).toMatchObject({
      figure: '125.9',
      from: '152.9',
    });
    expect(changes.map((one) => one.key)).toContain('amendments_changed');
  });

  test('a change without words of its own is still named by its part', () => {
    const other = { ...signed, site: { ...signed.site, name: 'Another name' } };
    expect(differences(signed, other)).toEqual([{ key: 'part_changed', values: { part: 'site' }, at: null }]);
  });
});
