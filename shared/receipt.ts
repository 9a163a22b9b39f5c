import type { Known } from './entries/entry.ts';
import type { Problem } from './problem.ts';

/** A problem with its words in the language of the one who asked. */
export type SaidProblem = Problem & { words: { problem: string; remedy: string } };

/**
 * What the book answers to one draft. Taken: `seq` and `received_at` (the same ones when the same entry comes
 * again), `problem` null. Refused: `seq` and `received_at` null, `problem` the first of `problems`.
 */
export type Receipt = {
  id: string | null; // of the draft; null when it had none
  seq: number | null;
  received_at: string | null;
  known: Known | null; // how the book knows who wrote it
  problem: SaidProblem | null;
  problems: SaidProblem[];
};
