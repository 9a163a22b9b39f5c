import { readdirSync, readFileSync } from 'node:fs';
import { expect, it, test } from 'vitest';
import { runFile } from '#bin/reference/run.ts';
import { world } from '#lib/limits/world/world.ts';

type Case = { id: string; kind: string; inputs: { profile?: string; profile_figures?: unknown } };

const folder = new URL('../reference/', import.meta.url);
const cases: Case[] = readdirSync(folder)
  .filter((name) => name.startsWith('21-more-limits'))
  .flatMap((name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')).cases);

const places = new Set(world.map(({ id }) => id));
const carried = cases.filter(
  ({ inputs }) => places.has(inputs.profile ?? '') && inputs.profile_figures !== undefined,
);
const withoutFigures = ({ inputs: { profile_figures: _, ...inputs }, ...one }: Case) => ({ ...one, inputs });
const outcomeOf = (one: object) => runFile(JSON.stringify({ cases: [one] }))[0];

/** The cases carry their place's figures; here they are taken away, so that the shipped profile has to answer. */
test.each(carried.map((one) => [one.id, one.inputs.profile, one] as const))(
  '%s: the shipped profile of %s answers as the case expects',
  (_, __, one) => {
    const { why, differences } = outcomeOf(withoutFigures(one)) ?? {};
    expect({ why, differences }).toEqual({ why: null, differences: [] });
  },
);

it('at least the fifteen cases of seven places were run', () => {
  expect(carried.length).toBeGreaterThanOrEqual(15);
  const judged = new Set(carried.map(({ inputs }) => inputs.profile));
  expect([...judged].toSorted()).toEqual(['au_322', 'ca_nb', 'es', 'eu', 'fr', 'uk_england', 'uk_scotland']);
});

it('a case under the limits of another place comes out otherwise: the profile does decide', () => {
  const scots = carried.filter(({ id }) => id === 'OP-18').map(withoutFigures);
  const moved = scots.map((one) => ({ ...one, inputs: { ...one.inputs, profile: 'uk_england' } }));
  expect(moved.map((one) => outcomeOf(one)?.passed)).toEqual([false]);
});
