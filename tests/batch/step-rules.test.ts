import { expect, test } from 'vitest';
import { minutesOut, outBy, stepRules } from '#app/batch/step-rules.ts';
import { profile } from '#lib/limits/profiles.ts';

const fda = stepRules(profile('fda_2022'));
const at = (time: string) => Date.parse(`2026-10-17T${time}Z`);

test('the times that stand on the form are those of the limits in force: 3-501.19 gives 4 h and 6 h', () => {
  expect([minutesOut(fda, '4h'), minutesOut(fda, '6h')]).toEqual([240, 360]);
  expect(fda.timeControl?.section).toContain('3-501.19');
  expect(fda.dateMark).toEqual({ section: '3-501.17(A)', days: 7 });
});

test('food that left its temperature at 11:32:48 is marked 15:32: a mark has no seconds and never a later minute', () => {
  expect(outBy(fda, '4h', at('11:32:48'))).toBe(at('15:32:00'));
  expect(outBy(fda, '6h', at('11:32:48'))).toBe(at('17:32:00'));
});

test('limits that are not known, or know no such way, give no time', () => {
  expect(outBy(stepRules(null), '4h', at('11:32:48'))).toBeNull();
  expect(stepRules(null)).toEqual({ timeControl: null, cooling: null, dateMark: null });
});

test('the ways of cooling stand beside their section, 3-501.15', () => {
  expect(fda.cooling?.section).toBe('3-501.15');
  expect(fda.cooling?.methods).toContain('shallow_pans');
});
