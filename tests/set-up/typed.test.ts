import { v7 } from 'uuid';
import { describe, expect, test } from 'vitest';
import { firstMeant, firstTyped } from '#app/first-run/first-run-typed.ts';
import { fieldOf } from '#app/set-up/form/field-of.ts';
import { numberOrNull, partsOf } from '#app/set-up/form/typed-values.ts';
import { heightMeant, heightShown } from '#app/set-up/kitchen/altitude.ts';
import { kitchenMeant, kitchenTyped } from '#app/set-up/kitchen/kitchen-typed.ts';
import { asksNothing, atMostBelowEvery, planMeant, planTyped } from '#app/set-up/plan/plan-typed.ts';
import type { Body } from '#shared/entries/entry.ts';
import { problemsOf } from '#shared/entries/issues.ts';
import { plan as planKind } from '#shared/entries/plan.ts';
import { site as siteKind } from '#shared/entries/site.ts';
import { firstRun } from '#shared/requests/first-run.ts';

const site: Body<'site'> = {
  name: 'Lantern Ditch',
  address: null,
  zone: 'America/Chicago',
  altitude_m: 183,
  unit: 'degF',
  clock: '12',
  language: 'en',
  day_starts: '04:00',
  closed_weekdays: [0],
  closed_on: ['2026-12-25'],
  profile: 'fda_2022',
  late_after_min: 15,
  odd_above: 250,
  paper: 'letter',
  house: { reheat_may_return: false, reheat_within_min: null, decides: 'manager', decide_within_min: 30 },
};

describe('a blank is unknown, never zero', () => {
  test.each([
    ['', null],
    ['  ', null],
    ['0', 0],
    ['150,5', 150.5],
    ['-4.5', -4.5],
    ['warm', 'warm'],
  ])('“%s” is %s', (text, meant) => {
    expect(numberOrNull({ figure: text }, 'figure')).toBe(meant);
  });
  test('parts may stand with commas, spaces or on lines of their own', () => {
    expect(partsOf({ list: '0, 60\n120; 240' }, 'list')).toEqual(['0', '60', '120', '240']);
  });
});

describe('a problem finds its field', () => {
  test.each([
    ['name', 'name'],
    ['body.set.value', 'set_value'],
    ['checkpoints_min.2', 'checkpoints_min'],
    ['house.reheat_within_min', 'house_reheat_within_min'],
    ['set', 'set_value'],
    ['house', null],
    ['by', null],
  ])('%s belongs to %s', (path, field) => {
    const fields = ['name', 'set_value', 'checkpoints_min', 'house_reheat_within_min', 'house_decides'];
    expect(fieldOf(path, fields)).toBe(field);
  });
});

describe('the kitchen form', () => {
  const meant = (change: Record<string, string | string[]>) =>
    siteKind.body.parse(kitchenMeant(site, { ...kitchenTyped(site), ...change }, site.unit));

  test('nobody touched is what stands in the book, to the digit', () => {
    expect(meant({})).toEqual(site);
  });
  test('a height in feet is kept in metres: 600 ft are 182.88 m', () => {
    expect(heightShown(183, 'ft')).toBe('600'); // 600.39
    expect(heightMeant(600, 'ft')).toBe(182.9);
    expect(heightMeant(600, 'm')).toBe(600);
    expect(meant({ altitude_m: '1000' }).altitude_m).toBe(304.8);
    expect(meant({ altitude_m: '' }).altitude_m).toBeNull();
  });
  test('a bound that nobody touched follows the unit: 250 °F are 121 °C', () => {
    expect(meant({ unit: 'degC' }).odd_above).toBe(121); // 121.1
    expect(meant({ unit: 'degC', odd_above: '130' }).odd_above).toBe(130);
  });
  test('the house rules of another page stay', () => {
    expect(meant({ name: 'Other' }).house).toEqual(site.house);
  });
  test('words for a figure are named as typed, not turned into nothing', () => {
    const candidate = kitchenMeant(site, { ...kitchenTyped(site), late_after_min: 'soon' }, site.unit);
    const found = siteKind.body.safeParse(candidate);
    expect(found.success ? [] : problemsOf(found.error, candidate)).toMatchObject([
      { field: 'late_after_min', problem: 'not_a_number', values: { typed: 'soon' } },
    ]);
  });
});

describe('the plan form', () => {
  const typed = { ...planTyped(null), every_min: '120', at_most_min: '150' };
  test('a new one is a plan that the book takes, and nothing is chosen for its places', () => {
    const meant = planKind.body.parse(planMeant(v7(), typed));
    expect([meant.equipment, meant.spots, meant.every_min, meant.at_most_min]).toEqual([[], [], 120, 150]);
  });
  test.each([
    ['120', '150', false],
    ['120', '120', false],
    ['120', '119', true],
    ['', '60', false],
    ['120', '', false],
  ])('every %s, at most %s: shorter is %s', (every, atMost, below) => {
    expect(atMostBelowEvery({ ...typed, every_min: every, at_most_min: atMost })).toBe(below);
  });
  test('without interval and without times it asks for nothing', () => {
    expect(asksNothing(planTyped(null))).toBe(true);
    expect(asksNothing({ ...planTyped(null), checkpoints_min: '0, 60' })).toBe(false);
  });
});

describe('the first run', () => {
  const typed = {
    ...firstTyped('fda_2022'),
    site_name: 'Lantern Ditch',
    site_zone: 'America/Chicago',
    person_name: 'Delia Marchbanks',
    person_initials: 'DM',
    secret: 'thyme and smoke ',
    device: 'pit tablet',
  };
  const meant = (change = {}) =>
    firstMeant({ ...typed, ...change }, { language: 'en' }, { person: v7(), newId: v7 });

  test('with a name, a zone, a person and a secret it is a request that the server takes', () => {
    expect(firstRun.safeParse(meant()).error?.issues).toBeUndefined();
  });
  test('the house begins with what allows least: a manager decides, no reheat returns food by itself', () => {
    expect(firstRun.parse(meant()).site.house).toEqual({
      reheat_may_return: false,
      reheat_within_min: null,
      decides: 'manager',
      decide_within_min: 30,
    });
  });
  test('a secret keeps the space at its end', () => {
    expect(firstRun.parse(meant()).secret).toBe('thyme and smoke ');
  });
  test('whoever leaves a number is called', () => {
    expect(firstRun.parse(meant()).person.on_call).toBe(false);
    expect(firstRun.parse(meant({ person_phone: '555-0100' })).person.on_call).toBe(true);
  });
  test('what is missing is named by its field', () => {
    const candidate = meant({ site_zone: '', person_initials: '' });
    const found = firstRun.safeParse(candidate);
    const fields = found.success ? [] : problemsOf(found.error, candidate).map(({ field }) => field);
    expect(fields).toEqual(['site.zone', 'person.initials']);
  });
});
