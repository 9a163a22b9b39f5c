import type { Written } from '#app/client/written.ts';
import type { Body } from '#shared/entries/entry.ts';
import type { StepName } from '#shared/entries/step-name.ts';
import { typedFood } from '#shared/foods.ts';

export type Made = Body<'batch'>['made'];

/** From which pieces of which batch something was made. `all`: nothing of these pieces is left over. */
export type SourceChoice = { batch: string; pieces: number[] | null; all: boolean };

export type NewBatchChoice = {
  batch: string; // id, made on this device
  name: string;
  food: string;
  /** What a hand typed that the kitchen has not set up: `food` is then its new id. null = it is set up. */
  typed?: string | null;
  pieces: number | null; // null = not counted
  made: Made;
  sources: SourceChoice[];
  step: StepName;
  equipment: string | null;
  details: Body<'step'>['details'];
  note: string | null;
};

/**
 * The entries of a new batch, in the order in which they are written: its food if nobody has set it up, what it is,
 * where it goes, and the end of the pieces that went into it. A part taken from a batch that is not counted leaves the rest where it was.
 */
export function newBatchEntries(choice: NewBatchChoice): Written[] {
  const { batch, name, food, typed, pieces, made, sources, step, equipment, details, note } = choice;
  return [
    ...(typed === null || typed === undefined
      ? []
      : [{ kind: 'food' as const, body: typedFood(food, typed) }]),
    {
      kind: 'batch',
      body: {
        batch,
        name: name.trim(),
        food,
        pieces,
        made,
        source: sources.map((source) => ({ batch: source.batch, pieces: source.pieces, words: null })),
        note,
      },
    },
    { kind: 'step', body: { batch, pieces: null, step, equipment, details } },
    ...sources.filter((source) => source.all).map((source) => usedUp(source, name.trim())),
  ];
}

const usedUp = (source: SourceChoice, into: string): Written => ({
  kind: 'step',
  body: {
    batch: source.batch,
    pieces: source.pieces,
    step: 'gone',
    equipment: null,
    details: { reason: 'used_up', text: into },
  },
});
