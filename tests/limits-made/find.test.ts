import { describe, expect, test } from 'vitest';
import { byPlace, found, type Offered, partsOf } from '#app/set-up/limits/find-limits.ts';
import { offeredLimits } from '#app/set-up/limits/offered.ts';
import { listedFigures } from '#lib/limits/listing.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import { messages } from '#shared/words/messages.ts';

const offered = offeredLimits({ limits: new Map(), site: null });
const english = (country: string) => country;
const spanish = (country: string) =>
  (messages.es.limits.country as Record<string, string>)[country] ?? country;
const ids = (places: readonly { offered: readonly Offered[] }[]) =>
  places.flatMap((place) => place.offered.map(({ id }) => id));

describe('limits by place', () => {
  test.each([
    ['USA, New York City', 'USA', 'New York City'],
    ['United Kingdom: Wales', 'United Kingdom', 'Wales'],
    ['USA', 'USA', ''],
    ['Codex (all members)', 'Codex (all members)', ''],
  ])('%s', (place, country, part) => {
    expect(partsOf(place)).toEqual({ country, part });
  });

  test('every profile stands in one country, once', () => {
    const all = ids(byPlace(offered, 'fda_2022', english));
    expect([...all].sort()).toEqual([...profileIds].sort());
  });

  test('the country of the chosen one comes first, what counts for all of it before its parts', () => {
    const [first, second] = byPlace(offered, 'uk_wales', english);
    expect(first?.country).toBe('United Kingdom');
    expect(second?.country).toBe('Australia');
    const usa = byPlace(offered, 'us_ny', english)[0]?.offered.map(({ id }) => id);
    expect(usa?.slice(0, 4)).toEqual(['fda_2022', 'fda_2017', 'fda_2013', 'us_ca']);
  });

  test('a kitchen’s own stand before all others while they are in use', () => {
    const body = { limits: 'own', name: 'Ours', extends: 'us_ny', changes: {}, active: true };
    const made = (active: boolean) =>
      new Map([['own', { body: { ...body, active }, by: 'boss', at: 0, entry: 'e' }]]);
    const [first] = byPlace(offeredLimits({ limits: made(true), site: null }), 'us_ny', english);
    expect(first).toMatchObject({
      country: null,
      offered: [{ id: 'own', over: 'New York State, restaurants' }],
    });
    expect(ids(byPlace(offeredLimits({ limits: made(false), site: null }), 'us_ny', english))).not.toContain(
      'own',
    );
  });
});

describe('typing finds', () => {
  test.each([
    ['new york', english, ['us_ny', 'us_ny_stores', 'us_nyc']],
    ['  YORK city ', english, ['us_nyc']],
    ['mexico', spanish, ['mx']],
    ['alemania', spanish, ['de', 'de_cook_chill']],
    ['wac 246', english, ['us_wa']],
    ['atlantis', english, []],
  ])('%s', (typed, called, expected) => {
    const places = byPlace(offered, 'fda_2022', called);
    expect(ids(found(places, typed, called)).sort()).toEqual([...expected].sort());
  });

  test('nothing typed hides nothing', () => {
    const places = byPlace(offered, 'fda_2022', english);
    expect(ids(found(places, ' ', english))).toHaveLength(profileIds.length);
  });
});

describe('words', () => {
  const at = (words: unknown, path: string): unknown =>
    path.split('.').reduce<unknown>((in_, key) => (in_ as Record<string, unknown> | undefined)?.[key], words);

  test.each(['en', 'es'] as const)(
    'every role and every country of the shipped profiles has them: %s',
    (language) => {
      const { role, country } = messages[language].limits;
      const all = profileIds.flatMap((id) => profile(id) ?? []);
      const roles = new Set(all.flatMap((one) => listedFigures(one).map((figure) => figure.role)));
      expect([...roles].filter((one) => typeof at(role, one) !== 'string')).toEqual([]);
      const countries = new Set(all.map(({ place }) => partsOf(place).country));
      expect([...countries].filter((one) => !(one in country))).toEqual([]);
    },
  );
});
