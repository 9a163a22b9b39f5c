import type { Written } from '#app/client/written.ts';
import type { Body } from '#shared/entries/entry.ts';
import type { StepName } from '#shared/entries/step-name.ts';
import type { Choice } from './choices.ts';

type Action = Body<'corrective_action'>['action'];
type Via = Body<'corrective_action'>['decided_via'];

export type Decided = { by: string; via: Via; words: string | null };

export type ActionChoice = {
  deviation: string; // its ref
  batch: string | null;
  pieces: number[] | null;
  choice: Choice;
  decided: Decided;
  step: StepName | null; // in which the food is
  equipment: string | null; // where it goes: reheat, recook, move
  condition: string | null;
  disposition: string | null;
  amount: string | null;
  cause: string | null;
  text: string;
  lang: 'en' | 'es';
};

const actions: Record<Exclude<Choice, 'release'>, Action> = {
  discard: 'discard',
  set_apart: 'tag_and_hold',
  reheat_and_return: 'reheat',
  reheat_protect: 'reheat',
  recook: 'recook',
  move: 'move',
  reheat_done: 'reheat_done',
  evaluate: 'evaluate',
  repair: 'repair',
  take_out_of_service: 'take_out_of_service',
  retrain: 'retrain',
  other: 'other',
};

/**
 * What one chosen action writes: the action with who decided it, and where the food goes by it (thrown away,
 * into the oven, to another cabinet). A release is a decision; it needs a reason in words.
 */
export function actionEntries(chosen: ActionChoice): Written[] {
  if (chosen.choice === 'release') return [release(chosen)];
  const { deviation, batch, pieces, decided, condition, disposition, amount, cause, text, lang } = chosen;
  const action: Written = {
    kind: 'corrective_action',
    body: {
      deviation,
      batch,
      pieces,
      action: actions[chosen.choice],
      decided_by: decided.by,
      decided_via: decided.via,
      decided_words: decided.words,
      condition,
      disposition,
      amount,
      cause,
      text,
      lang,
    },
  };
  return [action, ...moved(chosen)];
}

function release({ deviation, batch, pieces, decided, text }: ActionChoice): Written {
  return {
    kind: 'decision',
    body: {
      deviation,
      batch,
      pieces,
      decision: 'release',
      confirms: null,
      decided_by: decided.by,
      decided_via: decided.via,
      reason: decided.words === null ? text : `${text} (${decided.words})`,
    },
  };
}

/** The step that goes with the action, where food is moved by it. */
function moved({ batch, pieces, choice, step, equipment, amount }: ActionChoice): Written[] {
  if (batch === null) return [];
  const to = stepOf(choice, step);
  if (to === null) return [];
  const details: Body<'step'>['details'] =
    to === 'gone'
      ? { reason: 'discarded', ...(amount === null ? {} : { amount }) }
      : to === 'reheat'
        ? { route: 'conventional' }
        : {};
  return [
    { kind: 'step', body: { batch, pieces, step: to, equipment: to === 'gone' ? null : equipment, details } },
  ];
}

function stepOf(choice: Choice, now: StepName | null): StepName | null {
  if (choice === 'discard') return 'gone';
  if (choice === 'reheat_and_return' || choice === 'reheat_protect') return 'reheat';
  if (choice === 'recook') return 'cook';
  if (choice === 'reheat_done') return 'hot_hold';
  return choice === 'move' ? now : null;
}

/** The manager's own word, at their own sign-in, on what someone wrote down from the phone. */
export const confirmation = (
  deviation: string,
  confirms: string,
  decidedBy: string,
  reason: string,
): Written => ({
  kind: 'decision',
  body: {
    deviation,
    batch: null,
    pieces: null,
    decision: 'confirm',
    confirms,
    decided_by: decidedBy,
    decided_via: 'in_person',
    reason,
  },
});
