import { describe, expect, test } from 'vitest';
import { canonicalDay } from '#lib/sheet/canonical-day.ts';
import { judgedOtherwise } from '#lib/sheet/what-if.ts';
import { type Night, night } from '../fold/night.ts';

const dayOf = (made: Night, limits?: string) => {
  const day = canonicalDay(made.entries, '2026-05-08', limits === undefined ? {} : { limits });
  if (!day) throw new Error('no day');
  return day;
};
const otherwise = (made: Night, limits: string) =>
  judgedOtherwise(dayOf(made), dayOf(made, limits)).map((one) =>
    one.kind === 'check'
      ? { check: one.at, is: one.is, would: one.would }
      : {
          batch: one.batch.name,
          step: one.run.step,
          stage: one.stage,
          pieces: one.pieces,
          is: one.is && [one.is.verdict, one.is.section, one.is.limit?.value ?? one.is.limit_min],
          would: one.would && [
            one.would.verdict,
            one.would.section,
            one.would.limit?.value ?? one.would.limit_min,
          ],
        },
  );

/** Piece 1 at 138 °F, piece 2 at 142 °F. FDA asks 135 °F, New York State 140 °F (10 NYCRR 14-1.40). */
const held = (): Night =>
  night()
    .batch('17:05', 'A', 2, 'ribs')
    .step('17:10', 'A', 'hot_hold', 'cab1')
    .read('18:00', 'A1 edge', '138')
    .read('18:01', 'A2 edge', '142')
    .gone('18:05', 'A', null);

describe('a day under other limits', () => {
  test('names the piece that would be under, with section and figure of both', () => {
    expect(otherwise(held(), 'us_ny')).toEqual([
      {
        batch: 'A',
        step: 'hot_hold',
        stage: 'at_readings',
        pieces: [1],
        is: ['kept', '3-501.16(A)(1)', 135],
        would: ['broken', '10 NYCRR 14-1.40', 140],
      },
      {
        // Between looks nothing is shown, and it is broken once a look is.
        batch: 'A',
        step: 'hot_hold',
        stage: 'between_readings',
        pieces: [1],
        is: ['not_shown', '3-501.16(A)(1)', 135],
        would: ['broken', '10 NYCRR 14-1.40', 140],
      },
    ]);
  });

  test('that ask the same of what was written differ in nothing, though their sections are others', () => {
    expect(otherwise(held(), 'fda_2017')).toEqual([]);
    expect(otherwise(night(), 'us_ny')).toEqual([]);
  });

  test('with no figure at all take the verdict away: the European Union sets a duty without a number', () => {
    expect(otherwise(held(), 'eu')).toMatchObject([
      { stage: 'at_readings', pieces: [1, 2], would: ['not_applicable', expect.anything(), null] },
      { stage: 'between_readings', pieces: [1, 2], would: ['not_applicable', expect.anything(), null] },
    ]);
  });

  test('change nothing in the day itself', () => {
    const made = held();
    const before = JSON.stringify(dayOf(made));
    dayOf(made, 'us_ny');
    expect(JSON.stringify(dayOf(made))).toBe(before);
    expect(dayOf(made, 'us_ny').profile.id).toBe('us_ny');
  });
});
