import { dateMark } from '#lib/judge/date-mark.ts';
import { probeCheck } from '#lib/judge/probe-check.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Unit } from '#shared/units.ts';
import type { Case, Published } from './crossing.ts';
import { tenths } from './published.ts';

/** The last day that a mark allows, the day before it and the day after. */
export function days({ figures }: Published, profile: Profile): Case[] {
  const rule = figures.date_mark;
  if (rule === null) return [];
  const dayOf = (day: number) => new Date(Date.UTC(2026, 4, day)).toISOString().slice(0, 10);
  return [-1, 0, 1].map((step) => {
    const day = rule.days.days + step;
    const marked = { prepared_on: dayOf(1), as_of_date: dayOf(day) };
    return {
      covers: 'date_mark.days.days',
      what: `day ${day}`,
      expected: step <= 0 ? 'kept' : 'broken',
      actual: dateMark(marked, profile).verdict,
    };
  });
}

/** Off by a tenth less than the figure, by exactly it and by a tenth more, high and low; a dual scale is held to °C. */
export function thermometers({ figures }: Published, profile: Profile): Case[] {
  const { probe_fahrenheit: fahrenheit, probe_celsius: celsius } = figures;
  const off = (covers: string, most: number, unit: Unit, scale: 'both' | null): Case[] =>
    [-1, 1].flatMap((side) =>
      [-1, 0, 1].map((step) => {
        const by = tenths(most) + step;
        const expected = unit === 'degF' ? 320 : 0;
        const check = {
          expected: expected / 10,
          read: (expected + side * by) / 10,
          unit,
          scale,
          accuracy: null,
        };
        return {
          covers,
          what: `off by ${(side * by) / 10} ${unit}${scale === 'both' ? ', both scales' : ''}`,
          expected: step <= 0 ? 'kept' : 'broken',
          actual: probeCheck(check, profile)?.verdict,
        };
      }),
    );
  return [
    ...(fahrenheit === null ? [] : off('probe_fahrenheit.value', fahrenheit.value, 'degF', null)),
    ...(celsius === null ? [] : off('probe_celsius.value', celsius.value, 'degC', null)),
    ...(celsius === null ? [] : off('probe_celsius.value', celsius.value, 'degC', 'both')),
    // One degree Celsius is 1.8 °F apart.
    ...(celsius === null ? [] : off('probe_celsius.value', (celsius.value * 18) / 10, 'degF', 'both')),
  ];
}
