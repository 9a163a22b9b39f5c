import type { Body } from '#shared/entries/entry.ts';
import type { StepName } from '#shared/entries/step-name.ts';

type House = Body<'site'>['house'];

/** What can be done about the food, then about what caused it. Each is a choice; none is chosen beforehand. */
export const foodChoices = [
  'discard',
  'set_apart',
  'reheat_and_return',
  'reheat_protect',
  'recook',
  'move',
  'evaluate',
  'reheat_done',
  'release',
] as const;
export const otherChoices = ['repair', 'take_out_of_service', 'retrain', 'other'] as const;
export type Choice = (typeof foodChoices)[number] | (typeof otherChoices)[number];

/** Who forbids a choice, and why (message key under `deviation.shut`). */
export type Shut = {
  by: 'house' | 'code' | 'practice';
  why:
    | 'manager_decides'
    | 'no_return'
    | 'too_long'
    | 'last_good_unknown'
    | 'once'
    | 'time_was_over'
    | 'again';
  section: string | null;
  values: Record<string, number>;
};

export type OfferedChoice = { choice: Choice; shut: Shut | null };

export type Situation = {
  step: StepName | null; // null = not about food
  food: boolean;
  probe: boolean;
  section: string | null; // of the limit
  mayRelease: boolean; // the one who decides may bring blocked food back (lib/fold/authority.ts)
  house: Pick<House, 'reheat_may_return' | 'reheat_within_min'>;
  sinceLastGoodMin: number | null; // from the last good look to now; null = nobody knows
  reheatedBefore: boolean; // before this was found
  reheatedSince: boolean; // a reheat was begun about this
};

/**
 * The choices of one deviation, discarding first and always open, to everybody. What the house or a section
 * forbids stays in the list, shut, with the one who forbids it: the hand sees that it was thought of.
 * Which choices exist at all is trade custom (common practice, docs/design.md); local codes decide.
 */
export function offeredChoices(situation: Situation): OfferedChoice[] {
  const food = situation.food ? foodChoices.filter((choice) => fits(choice, situation)) : [];
  const other = otherChoices.filter(
    (choice) => choice !== 'take_out_of_service' || fitsOutOfService(situation),
  );
  return [...food, ...other].map((choice) => ({ choice, shut: shut(choice, situation) }));
}

const hot: readonly StepName[] = ['rest', 'hot_hold', 'service', 'transport', 'cooling', 'reheat'];
const kept: readonly StepName[] = ['rest', 'hot_hold', 'service', 'transport', 'cold_hold', 'cooling'];

function fits(choice: Choice, { step, reheatedSince }: Situation): boolean {
  if (choice === 'reheat_done') return reheatedSince;
  if (choice === 'recook') return step === 'cook';
  if (choice === 'move') return step === null || kept.includes(step);
  if (choice === 'reheat_and_return' || choice === 'reheat_protect')
    return step === null || hot.includes(step);
  return true;
}

const fitsOutOfService = ({ probe, food }: Situation): boolean => probe || !food;

function shut(choice: Choice, situation: Situation): Shut | null {
  if (choice === 'reheat_and_return') return shutReturn(situation);
  if (choice === 'reheat_protect') return shutReheat(situation);
  if ((choice === 'release' || choice === 'reheat_done') && !situation.mayRelease)
    return { by: 'house', why: 'manager_decides', section: null, values: {} };
  return null;
}

/** Food comes back by a reheat alone only where the house has said so, and within the time that it has said. */
function shutReturn(situation: Situation): Shut | null {
  const { house, sinceLastGoodMin: since } = situation;
  const never = shutReheat(situation);
  if (never !== null) return never;
  if (!house.reheat_may_return) return { by: 'house', why: 'no_return', section: null, values: {} };
  const within = house.reheat_within_min;
  if (within === null) return null;
  if (since === null)
    return { by: 'house', why: 'last_good_unknown', section: null, values: { withinMin: within } };
  if (since > within)
    return {
      by: 'house',
      why: 'too_long',
      section: null,
      values: { withinMin: within, sinceMin: Math.floor(since) },
    };
  return null;
}

/** What speaks against any reheat: it was done once, or the rule's own time for it is over. */
function shutReheat({ step, section, house, reheatedBefore, reheatedSince }: Situation): Shut | null {
  if (step === 'reheat') return { by: 'code', why: 'again', section, values: {} };
  if (reheatedBefore || reheatedSince) return { by: 'practice', why: 'once', section: null, values: {} };
  if (step === 'cooling' && !house.reheat_may_return)
    return { by: 'code', why: 'time_was_over', section, values: {} };
  return null;
}
