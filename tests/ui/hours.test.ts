import { describe, expect, test } from 'vitest';
import { fullHours, hourTicks } from '#app/ui/hours.ts';

const chicago = 'America/Chicago';
const at = (text: string): number => Date.parse(text);

describe('the hours of an axis', () => {
  test('stand at full hours of the wall that divide by the step', () => {
    const found = fullHours(at('2026-10-16T20:10:00-05:00'), at('2026-10-17T05:00:00-05:00'), chicago, 4);
    expect(found).toEqual([at('2026-10-17T00:00:00-05:00'), at('2026-10-17T04:00:00-05:00')]);
  });

  test('of food that lived for days are every so many midnights, over the night on which clocks go back too', () => {
    const found = fullHours(at('2026-10-30T12:00:00-05:00'), at('2026-11-05T12:00:00-06:00'), chicago, 48);
    expect(found).toEqual([
      at('2026-10-31T00:00:00-05:00'),
      at('2026-11-02T00:00:00-06:00'),
      at('2026-11-04T00:00:00-06:00'),
    ]);
  });

  test('are dates in the reader’s language where a day is the least step', () => {
    const axis = {
      from: at('2026-10-30T12:00:00-05:00'),
      to: at('2026-11-02T12:00:00-06:00'),
      zone: chicago,
    };
    const words = hourTicks({ ...axis, clock: '24', locale: 'es' }, 272, 60).map((tick) => tick.words);
    expect(words).toEqual(['31 oct', '1 nov', '2 nov']);
  });
});
