import type { StepName } from '#shared/entries/step-name.ts';

/** A step that the screen shows as a key. `shut` = cannot be pressed, and why (message key under `batch.shut`). */
export type OfferedStep = { step: StepName; shut: 'do_not_serve' | 'time_control_ends' | null };

const everyStep: readonly StepName[] = [
  'cook',
  'rest',
  'hot_hold',
  'cutting',
  'service',
  'transport',
  'cooling',
  'cold_hold',
  'reheat',
  'time_control',
  'gone',
];

/** The usual way of a piece through a smoking kitchen (docs/design.md names the steps; the order is common practice). */
const usual: Record<StepName | 'start', readonly StepName[]> = {
  start: ['cook', 'hot_hold', 'cold_hold', 'reheat', 'cooling'],
  cook: ['rest', 'hot_hold', 'cutting', 'gone'],
  rest: ['hot_hold', 'cutting', 'cooling', 'gone'],
  hot_hold: ['cutting', 'service', 'transport', 'cooling', 'gone'],
  cutting: ['service', 'hot_hold', 'cooling', 'gone'],
  service: ['gone', 'hot_hold', 'cooling'],
  transport: ['service', 'hot_hold', 'gone'],
  cooling: ['cold_hold', 'reheat', 'gone'],
  cold_hold: ['reheat', 'service', 'gone'],
  reheat: ['hot_hold', 'service', 'cutting', 'cooling', 'gone'],
  time_control: ['gone'],
  gone: [],
};

/** Steps that put food before a guest, or spread it where it can no longer be told apart. */
const serves: readonly StepName[] = ['cutting', 'service', 'transport', 'time_control'];

/**
 * What these pieces may do next: the usual steps first, then (`more`) every other one.
 *
 * @param from the step they are in; null = none yet
 * @param blocked all of the chosen pieces must not be served
 */
export function offeredSteps(
  from: StepName | null,
  blocked: boolean,
): { usual: OfferedStep[]; more: OfferedStep[] } {
  const first = usual[from ?? 'start'];
  const rest = everyStep.filter((step) => step !== from && !first.includes(step));
  const offered = (step: StepName): OfferedStep => ({ step, shut: whyShut(step, from, blocked) });
  return { usual: first.map(offered), more: rest.map(offered) };
}

function whyShut(step: StepName, from: StepName | null, blocked: boolean): OfferedStep['shut'] {
  // FDA Food Code 2022 3-501.19: food held by time alone is served or thrown away, it does not go back.
  if (from === 'time_control' && step !== 'gone') return 'time_control_ends';
  return blocked && serves.includes(step) ? 'do_not_serve' : null;
}
