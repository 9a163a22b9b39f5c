import type { BatchFrame } from './batch-frame.ts';

/** A piece of a batch, as one name: "batch id/3", "batch id/-" for one that is not counted. */
export const pieceName = (batch: string, piece: number | null): string => `${batch}/${piece ?? '-'}`;

export type Origin = { batch: string; pieces: (number | null)[] };

/** The pieces of other batches that a batch was made of. */
export function originsOf(frame: BatchFrame, frames: ReadonlyMap<string, BatchFrame>): Origin[] {
  return frame.body.source.flatMap(({ batch, pieces }) => {
    const from = batch === null ? undefined : frames.get(batch);
    if (!from || from.id === frame.id) return [];
    return [{ batch: from.id, pieces: pieces ?? leftAt(from, frame.at) }];
  });
}

/** Pieces that were not gone at `at`; all of them when none was left (used up before it was written down). */
function leftAt(frame: BatchFrame, at: number): (number | null)[] {
  const left = frame.steps.pieces.filter((piece) => (frame.steps.ends.get(piece)?.at ?? at) >= at);
  return left.length > 0 ? left : frame.steps.pieces;
}

/** Batches made of these pieces, theirs, and so on: what a block passes on to. */
export function descendants(
  batch: string,
  piece: number | null,
  after: number,
  frames: ReadonlyMap<string, BatchFrame>,
): BatchFrame[] {
  const found = new Map<string, BatchFrame>();
  const ask = (from: string, pieces: readonly (number | null)[] | null, since: number): void => {
    for (const frame of frames.values()) {
      if (frame.at < since || found.has(frame.id) || frame.id === from || frame.id === batch) continue;
      const made = originsOf(frame, frames).some(
        (origin) =>
          origin.batch === from && (pieces === null || origin.pieces.some((one) => pieces.includes(one))),
      );
      if (!made) continue;
      found.set(frame.id, frame);
      ask(frame.id, null, frame.at);
    }
  };
  ask(batch, [piece], after);
  return [...found.values()];
}
