import type { Written } from '#app/client/written.ts';
import type { Body } from '#shared/entries/entry.ts';
import type { StepName } from '#shared/entries/step-name.ts';

type Details = Body<'step'>['details'];

export type StepChoice = {
  batch: string;
  pieces: number[] | null; // null = all that are not gone
  step: StepName;
  equipment: string | null;
  details: Details;
};

/** One step as an entry. Blank words and unset members are left out, so that the book holds only what was said. */
export function stepEntry(choice: StepChoice): Written {
  const { batch, pieces, step, equipment, details } = choice;
  const said = Object.entries(details).filter(([, value]) => value !== undefined && value !== '');
  return {
    kind: 'step',
    body: {
      batch,
      pieces,
      step,
      equipment: step === 'gone' ? null : equipment,
      details: Object.fromEntries(said),
    },
  };
}

/** The pieces as an entry names them: null when every piece that is left was chosen. */
export function chosenPieces(chosen: readonly number[], left: readonly number[]): number[] | null {
  const all = left.length === chosen.length && left.every((piece) => chosen.includes(piece));
  return all ? null : [...chosen].sort((a, b) => a - b);
}
