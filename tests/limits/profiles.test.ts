import { describe, expect, it, test } from 'vitest';
import { fda2022 } from '#lib/limits/fda-2022.ts';
import { temperatureFigure } from '#lib/limits/figure.ts';
import { profileSource, resolved } from '#lib/limits/profile.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';

const fda = profile('fda_2022');
const figures = fda?.figures;

describe('the figures of FDA Food Code 2022, typed from the published rule', () => {
  const temperatures = [
    ['hot_hold', 135, 57, 'at_or_above', '3-501.16(A)(1)'],
    ['hot_hold_roast', 130, 54, 'at_or_above', '3-501.16(A)(1)'],
    ['cold_hold', 41, 5, 'at_or_below', '3-501.16(A)(2)'],
    ['reheat_from', 41, 5, 'at_or_below', '3-403.11(D)'],
  ] as const;
  test.each(temperatures)('%s: %s °F, %s °C, %s, %s', (role, degF, degC, comparison, section) => {
    expect(figures?.[role]).toMatchObject({ value: { degF, degC }, first: 'degF', comparison, section });
  });
  test.each([
    [0, 'stage_1', 70, 21, 120, '3-501.14(A)(1)'],
    [1, 'total', 41, 5, 360, '3-501.14(A)(2)'],
  ])('cooling %s %s to %s °F, %s °C within %s min', (place, name, degF, degC, minutes, section) => {
    expect(figures?.cooling[place]).toMatchObject({
      name,
      from: { value: { degF: 135, degC: 57 }, comparison: 'at_or_above' },
      to: { value: { degF, degC }, comparison: 'at_or_below' },
      within: { minutes, comparison: 'at_most', section },
      counted: 'from_start',
    });
  });
  test.each([
    ['reheat_conventional', 165, 74, 15, null, '3-403.11(A)'],
    ['reheat_microwave', 165, 74, 0, 120, '3-403.11(B)'],
    ['reheat_commercial', 135, 57, 0, null, '3-403.11(C)'],
  ] as const)('%s: %s °F, %s °C for %s s', (role, degF, degC, heldS, standS, section) => {
    const target = { value: { degF, degC }, comparison: 'at_or_above', section };
    expect(figures?.[role]).toMatchObject({ target, held_s: heldS, stand_s: standS });
  });
  it('room-warm ingredients 240 min, reheating 120 min, thermometers 2 °F and 1 °C', () => {
    expect(figures?.cooling_ambient?.within.minutes).toBe(240);
    expect(figures?.reheat_within?.minutes).toBe(120);
    expect(figures?.probe_fahrenheit).toMatchObject({ value: 2, unit: 'degF', section: '4-203.11(B)' });
    expect(figures?.probe_celsius).toMatchObject({ value: 1, unit: 'degC', section: '4-203.11(A)' });
  });
});

describe('a figure without its source is refused', () => {
  const figure = fda2022.figures.hot_hold;
  test.each(['id', 'section', 'edition', 'checked', 'where', 'speaks_of', 'value', 'comparison'])(
    '%s',
    (name) => {
      const without = Object.fromEntries(Object.entries(figure ?? {}).filter(([key]) => key !== name));
      expect(temperatureFigure.safeParse(figure).success).toBe(true);
      expect(temperatureFigure.safeParse(without).success).toBe(false);
      expect(temperatureFigure.safeParse({ ...figure, [name]: '' }).success).toBe(false);
    },
  );
  it('and so is one in no unit, and one with a member that nobody knows', () => {
    expect(temperatureFigure.safeParse({ ...figure, value: { degF: null, degC: null } }).success).toBe(false);
    expect(temperatureFigure.safeParse({ ...figure, note: 'x' }).success).toBe(false);
  });
});

describe('a profile that extends another', () => {
  it('names only what differs, and takes the rest', () => {
    const hotter = { ...fda2022.figures.hot_hold, value: { degF: 140, degC: 60 }, section: 'local 1' };
    const source = profileSource.parse({
      id: 'local',
      name: 'A local code',
      place: 'nowhere',
      force: 'law',
      edition: 'invented',
      extends: 'fda_2022',
      notes: [],
      figures: { hot_hold: hotter, hot_hold_roast: null },
    });
    const local = resolved(source, fda);
    expect(local.figures.hot_hold?.value.degF).toBe(140);
    expect(local.figures.hot_hold_roast).toBeNull();
    expect(local.figures.cooling).toEqual(fda?.figures.cooling);
  });
  it('has no figure at all where it has no parent and names none', () => {
    const bare = resolved(
      {
        id: 'bare',
        name: 'Bare',
        edition: 'invented',
        place: 'nowhere',
        force: 'law',
        extends: null,
        notes: [],
        figures: {},
      },
      null,
    );
    expect(bare.figures.hot_hold).toBeNull();
    expect(bare.figures.cooling).toEqual([]);
  });
});

it('every profile is found by its id, and an unknown id is none', () => {
  expect(profileIds[0]).toBe('fda_2022');
  expect(profile('fda_2022')?.name).toBe('FDA Food Code 2022');
  expect(profile('toString')).toBeNull();
});
