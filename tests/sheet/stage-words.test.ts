import { describe, expect, test } from 'vitest';
import { profile } from '#lib/limits/profiles.ts';
import { SheetNames } from '#lib/sheet/sheet-names.ts';
import { sheetWords } from '#lib/sheet/sheet-words.ts';
import { sectionWords, unreadLegend } from '#lib/sheet/stage-words.ts';
import { dayOfDemo, friday } from './demo-day.ts';

describe('a figure that nobody has read in its own text', () => {
  const day = dayOfDemo(friday);
  const names = new SheetNames(day, sheetWords('en'), 'en');
  const held = day.batches.flatMap(({ runs }) => runs).find(({ step }) => step === 'hot_hold');
  const stage = held?.stages.at_readings;

  test('carries a sign behind its section, and the sign is explained', () => {
    expect(profile('fda_2022')?.figures.hot_hold?.checked).toBe('memory');
    expect(stage && sectionWords(names, 'at_readings', stage)).toBe('3-501.16(A)(1)*');
    expect(unreadLegend(names)).toEqual([
      '* Figure from memory: the text of this edition was not read; look it up before you rely on it.',
    ]);
  });

  test('is none where all were read: no sign, nothing to explain', () => {
    const read = structuredClone(day);
    for (const { stages } of read.batches.flatMap(({ runs }) => runs))
      for (const one of Object.values(stages)) delete one.checked;
    const bare = new SheetNames(read, sheetWords('en'), 'en');
    const own = read.batches.flatMap(({ runs }) => runs).find(({ id }) => id === held?.id)
      ?.stages.at_readings;
    expect(own && sectionWords(bare, 'at_readings', own)).toBe('3-501.16(A)(1)');
    expect(unreadLegend(bare)).toEqual([]);
  });
});
