import type { Batch } from '#lib/fold/book.ts';

/** How the numbered things of a batch are called: "piece 2", "pan 2". */
export const countedAs = (batch: Pick<Batch, 'food'> | null | undefined): 'pieces' | 'pans' =>
  batch?.food?.counted === 'pans' ? 'pans' : 'pieces';
