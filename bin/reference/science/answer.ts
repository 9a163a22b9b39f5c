import * as z from 'zod';
import { bounds } from './bounds.ts';
import { conduction } from './conduction.ts';
import { charts } from './control-charts.ts';
import { rates } from './cooling-rate.ts';
import { forecast } from './forecast.ts';
import { growth } from './growth.ts';
import { inputsOf } from './inputs.ts';
import type { Kind } from './kind.ts';
import { lethal } from './lethality.ts';
import { clocks } from './local-time.ts';
import { rest } from './rest.ts';
import { sampling } from './sampling.ts';
import { thermometer } from './thermometer.ts';

/** One file a topic of the cases, 01 to 11. */
const kinds: Record<string, Kind> = {
  ...rates,
  ...conduction,
  ...forecast,
  ...rest,
  ...lethal,
  ...growth,
  ...bounds,
  ...charts,
  ...thermometer,
  ...sampling,
  ...clocks,
};

/** The answer of lib/science to a case of the kind; null when the kind is not one of its own. Throws on other shapes. */
export function scienceAnswer(name: string, inputs: unknown): Record<string, unknown> | null {
  const found = Object.hasOwn(kinds, name) ? kinds[name] : undefined;
  if (found === undefined) return null;
  const none = Object.fromEntries(found.outputs.map((output) => [output, null]));
  return found.answer(inputsOf(inputs)) ?? none;
}

const expectedValues = z.record(z.string(), z.looseObject({ value: z.unknown() }));

/** `{name: {value, unit}}` as a case of lib/science expects, without the units. Throws when a name has no value. */
export const valuesOf = (expected: unknown): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(expectedValues.parse(expected)).map(([name, { value }]) => [name, value]),
  );
