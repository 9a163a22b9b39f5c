import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DateMarked, dateMark } from '#lib/judge/date-mark.ts';
import { fda } from './records.ts';

/** The properties of docs/judge.md, section 6, for a rule that counts calendar days and reads no thermometer. */
const dateOf = (day: number): string =>
  new Date(Date.UTC(2026, 1, 20) + day * 86_400_000).toISOString().slice(0, 10);
const judge = (marked: DateMarked) => dateMark(marked, fda);
const rank = { kept: 0, not_shown: 1, broken: 2, not_applicable: -1 };

/** In days from an invented one, over the end of a February and a night on which clocks change. */
type Days = {
  prepared: number | null;
  opened: number | null;
  combined: number[];
  frozen: [number, number | null][];
  today: number;
};

const days: fc.Arbitrary<Days> = fc.record({
  prepared: fc.option(fc.integer({ min: 0, max: 12 })),
  opened: fc.option(fc.integer({ min: 0, max: 12 })),
  combined: fc.array(fc.integer({ min: 0, max: 12 }), { maxLength: 3 }),
  frozen: fc.array(
    fc
      .tuple(fc.integer({ min: 0, max: 25 }), fc.option(fc.integer({ min: 0, max: 12 }), { freq: 6 }))
      .map(([from, length]): [number, number | null] => [from, length === null ? null : from + length]),
    { maxLength: 3 },
  ),
  today: fc.integer({ min: 0, max: 45 }),
});

const markOf = ({ prepared, opened, combined, frozen, today }: Days, by = 0): DateMarked => {
  const on = (day: number | null) => (day === null ? null : dateOf(day + by));
  return {
    prepared_on: on(prepared),
    opened_on: on(opened),
    combined_with: combined.map((day) => dateOf(day + by)),
    frozen: frozen.map(([from, to]): [string, string | null] => [dateOf(from + by), on(to)]),
    as_of_date: dateOf(today + by),
  };
};

describe('date_mark keeps what every rule promises', () => {
  test('an older food combined with it never mends', () => {
    fc.assert(
      fc.property(days, fc.integer({ min: 0, max: 12 }), (one, day) => {
        const known = one.prepared !== null || one.opened !== null || one.combined.length > 0;
        fc.pre(known);
        const after = judge(markOf({ ...one, combined: [...one.combined, day] }));
        // A food that was put in the freezer in time stays in time only if the older one was too.
        expect(rank[after.verdict]).toBeGreaterThanOrEqual(rank[judge(markOf(one)).verdict]);
      }),
      { numRuns: 2000 },
    );
  });
  test('the order of entry does not matter', () => {
    fc.assert(
      fc.property(days, (one) => {
        const turned = { ...one, combined: one.combined.toReversed(), frozen: one.frozen.toReversed() };
        expect(judge(markOf(turned))).toEqual(judge(markOf(one)));
      }),
      { numRuns: 2000 },
    );
  });
  test('shifting all days by one amount changes no verdict, and the last day by that amount', () => {
    fc.assert(
      fc.property(days, fc.integer({ min: -900, max: 900 }), (one, by) => {
        const [here, there] = [judge(markOf(one)), judge(markOf(one, by))];
        const shifted =
          here.last_day === null
            ? null
            : new Date(Date.parse(`${here.last_day}T00:00:00Z`) + by * 86_400_000).toISOString().slice(0, 10);
        expect(there).toEqual({ ...here, last_day: shifted });
      }),
      { numRuns: 2000 },
    );
  });
  test('a later day never mends, and the last day is the last that is kept', () => {
    fc.assert(
      fc.property(days, fc.integer({ min: 1, max: 30 }), (one, more) => {
        const [now, later] = [judge(markOf(one)), judge(markOf({ ...one, today: one.today + more }))];
        expect(rank[later.verdict]).toBeGreaterThanOrEqual(rank[now.verdict]);
        if (now.last_day !== null) expect(now.verdict === 'kept').toBe(dateOf(one.today) <= now.last_day);
      }),
      { numRuns: 2000 },
    );
  });
  test('without a freezer it is day 7 of the oldest, counted here by hand', () => {
    fc.assert(
      fc.property(days, (one) => {
        const marks = [one.prepared, one.opened, ...one.combined].filter((day) => day !== null);
        fc.pre(marks.length > 0);
        const day = one.today - Math.min(...marks) + 1;
        expect(judge(markOf({ ...one, frozen: [] })).verdict).toBe(day <= 7 ? 'kept' : 'broken');
      }),
      { numRuns: 2000 },
    );
  });
  test('with one: of the days that have passed those in the freezer do not count, the first and the last do', () => {
    fc.assert(
      fc.property(days, (one) => {
        const marks = [one.prepared, one.opened, ...one.combined].filter((day) => day !== null);
        fc.pre(marks.length > 0 && one.frozen.every(([, to]) => to !== null));
        const isIn = (day: number) => one.frozen.some(([from, to]) => day > from && day < (to ?? 0));
        const count = Array.from({ length: 60 }, (_, day) => day).filter(
          (day) => day >= Math.min(...marks) && day <= one.today && !isIn(day),
        ).length;
        const isFrozenNow = isIn(one.today);
        const { verdict } = judge(markOf(one));
        if (count <= 7 && !(count === 7 && isFrozenNow)) expect(verdict).toBe('kept');
        if (count > 7) expect(verdict).not.toBe('kept');
      }),
      { numRuns: 2000 },
    );
  });
});
