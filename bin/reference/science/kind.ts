import type { Inputs } from './inputs.ts';

/** The cases' names for what lib/science answers; null is a function that answers no number. */
export type Named = Record<string, unknown> | null;
export type Kind = {
  /** Every one is null where the function answers null. */
  outputs: readonly string[];
  answer: (inputs: Inputs) => Named;
};

export const kind = (outputs: string, answer: Kind['answer']): Kind => ({
  outputs: outputs.split(' '),
  answer,
});

export const named = <T>(found: T | null, to: (found: T) => Record<string, unknown>): Named =>
  found === null ? null : to(found);

/** Inputs that kinds of several files have. */
export const material = ({ number }: Inputs) => ({ h: number('h'), k: number('k'), alpha: number('alpha') });
export const timed = ({ number }: Inputs, place: 1 | 2) => ({
  t: number(`t${place}`),
  y: number(`y${place}`),
});
