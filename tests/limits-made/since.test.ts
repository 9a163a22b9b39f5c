import { describe, expect, test } from 'vitest';
import { limitsOf } from '#lib/fold/limits-of.ts';
import { canonicalDay } from '#lib/sheet/canonical-day.ts';
import { profileInPrint, profileWords } from '#lib/sheet/profile-words.ts';
import { SheetNames } from '#lib/sheet/sheet-names.ts';
import { sheetWords } from '#lib/sheet/sheet-words.ts';
import { ms, type Night } from '../fold/night.ts';
import { body, looser, twoHands } from './two-hands.ts';

const since = (made: Night, clock: string) => {
  const found = limitsOf(made.book(clock).kitchen).local?.since;
  return [...(found ?? [])].map(([role, { by, at }]) => [role, by, at]);
};

describe('who entered a change stays named', () => {
  test('when somebody else changes another figure later', () => {
    expect(since(twoHands(), '20:00')).toEqual([
      ['hot_hold', 'cook', ms('17:30')],
      ['cold_hold', 'boss', ms('19:00')],
    ]);
  });

  test('and whoever writes the figure anew is named from then on', () => {
    const anew = twoHands().add('limits', '21:00', body({ hot_hold: { ...looser, value: 131 } }), {
      by: 'boss',
    });
    expect(since(anew, '20:00')[0]).toEqual(['hot_hold', 'cook', ms('17:30')]);
    expect(since(anew, '21:30')).toEqual([['hot_hold', 'boss', ms('21:00')]]);
  });

  test('over another published profile the same figure is a new word', () => {
    const moved = twoHands().add('limits', '21:00', body({ hot_hold: looser }, { extends: 'fda_2017' }), {
      by: 'boss',
    });
    expect(since(moved, '21:30')).toEqual([['hot_hold', 'boss', ms('21:00')]]);
  });

  test('on the sheet, beside its ground; what the foot has no room for stands on page 1', () => {
    const day = canonicalDay(twoHands().entries, '2026-05-08');
    if (!day) throw new Error('no day');
    const names = new SheetNames(day, sheetWords('en'), 'en');
    const words = profileWords(names);
    expect(profileInPrint(names)).toEqual({
      foot: 'Judged by Ours, FDA Food Code 2022; local changes on page 1.',
      first: words,
    });
    const cook = day.people.find(({ id }) => id === 'cook')?.name;
    const boss = day.people.find(({ id }) => id === 'boss')?.name;
    expect(words).toBe(
      `Judged by Ours, FDA Food Code 2022. Set by the kitchen: Food held hot: V-12 (County health, Variance 12, 2026-03-01), entered by ${cook}, 8 May 17:30; Food held cold: house limit. Entered by ${boss}, 8 May 19:00.`,
    );
  });
});
