import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sha256 } from '#db/sha256.ts';
import { canonicalDay } from '#lib/sheet/canonical-day.ts';
import { dayOfText } from '#lib/sheet/day-of-text.ts';
import { daySchema } from '#lib/sheet/day-schema.ts';
import type { Entry } from '#shared/entries/entry.ts';
import { canonicalText } from '#shared/envelope.ts';
import { demoEntries, idOf } from '../fold/demo-book.ts';
import { dayOfDemo, friday, readingsOf, saturdayDay } from './demo-day.ts';

/** Local bounds of the two days of the demo night, worked out by hand: 04:00 in Chicago, offset -05:00. */
const bounds: Record<string, [number, number]> = {
  [friday]: [Date.parse('2026-10-16T09:00:00Z'), Date.parse('2026-10-17T09:00:00Z')],
  [saturdayDay]: [Date.parse('2026-10-17T09:00:00Z'), Date.parse('2026-10-18T09:00:00Z')],
};

/** RFC 8785 written a second time, for texts and numbers as this document has them: it must say the same. */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  const members = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${members.map(([name, one]) => `${JSON.stringify(name)}:${canonical(one)}`).join(',')}}`;
}

describe('the canonical day', () => {
  test.each([friday, saturdayDay])(
    '%s follows its strict schema, and its text reads back as the same day (demand:48)',
    (day) => {
      const made = dayOfDemo(day);
      expect(daySchema.safeParse(made).error?.issues ?? []).toEqual([]);
      expect(dayOfText(canonicalText(made))).toEqual(made);
    },
  );

  test.each([friday, saturdayDay])('%s names every reading of that day once, and none of another', (day) => {
    const [from, to] = bounds[day] ?? [0, 0];
    const written = demoEntries.filter(
      (entry) => entry.kind === 'reading' && Date.parse(entry.at) >= from && Date.parse(entry.at) < to,
    );
    const told = readingsOf(dayOfDemo(day)).map((reading) => reading.id);
    expect(told.length).toBe(new Set(told).size);
    expect([...told].sort()).toEqual(written.map((entry) => entry.id).sort());
  });

  test('the same entries in any order give the same text', () => {
    const text = canonicalText(dayOfDemo(friday));
    const anyOrder = fc.shuffledSubarray([...demoEntries], {
      minLength: demoEntries.length,
      maxLength: demoEntries.length,
    });
    fc.assert(
      fc.property(anyOrder, (entries: Entry[]) => canonicalText(dayOfDemo(friday, entries)) === text),
      { numRuns: 5 },
    );
  });

  test('its hash is the SHA-256 of RFC 8785 text, worked out a second time', () => {
    const day = dayOfDemo(friday);
    const again = createHash('sha256')
      .update(Buffer.from(canonical(day), 'utf8'))
      .digest('hex');
    expect(sha256(canonicalText(day))).toBe(again);
  });

  test('a signature is no part of the day that it covers', () => {
    const without = demoEntries.filter((entry) => entry.kind !== 'signature');
    expect(without.length).toBe(demoEntries.length - 1);
    expect(canonicalText(dayOfDemo(friday, without))).toBe(canonicalText(dayOfDemo(friday)));
  });

  test('a day that goes on says so and is judged as of the moment of asking', () => {
    const day = dayOfDemo(saturdayDay);
    expect(day.over).toBe(false);
    expect(Date.parse(day.as_of)).toBe(Date.parse('2026-10-17T18:10:00Z'));
    expect(dayOfDemo(friday)).toMatchObject({ over: true, as_of: '2026-10-17T04:00:00-05:00' });
  });

  test('without a kitchen there is no day', () => {
    expect(canonicalDay([], friday)).toBeNull();
  });

  test('a batch belongs to every day that it lived through', () => {
    const names = (day: string) => dayOfDemo(day).batches.map((batch) => batch.name);
    expect(names(friday)).toContain('BR-A');
    expect(names(saturdayDay)).toContain('BR-A');
    expect(names(friday)).not.toContain('CB-2'); // chopped on Saturday
  });

  test('a correction shows both figures, and a late entry both times (demand:6 demand:7 demand:17)', () => {
    const day = dayOfDemo(saturdayDay);
    const corrected = readingsOf(day).find((reading) => reading.id === idOf('e0375'));
    expect(corrected).toMatchObject({ typed: '145.0', amended: { from: '1450', to: '145.0' } });
    const late = readingsOf(day).find((reading) => reading.id === idOf('e0555'));
    expect(late).toMatchObject({ late: true, at: '2026-10-17T09:32:00-05:00' });
    expect(day.late.map((one) => one.id)).toContain(idOf('e0555'));
  });

  test('a check after the day makes readings of the day suspect (demand:59)', () => {
    const blue = dayOfDemo(friday).thermometers.find((one) => one.id === idOf('blue'));
    expect(blue?.checks.map((check) => check.verdict)).toEqual(['kept']);
    expect(blue?.check_after).toMatchObject({ verdict: 'broken', typed: '35.0' });
    expect(blue?.suspect.length).toBe(10); // e0140, e0141, e0144, e0314 to e0320
  });
});
