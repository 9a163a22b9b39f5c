import type { Verdict } from '#lib/judge/answer.ts';
import { minutesBetween } from '#shared/time.ts';
import type { BatchFrame } from './batch-frame.ts';
import type { Deviation, Kitchen, Piece } from './book.ts';
import { type Ending, speaksOf } from './decided.ts';
import { restsOn } from './rests-on.ts';

type End = Deviation['ends'][number];
type Ends = ReadonlyMap<number | null, NonNullable<Piece['end']>>;

/** A reheat of one piece that the house lets return food by itself: kept in temperature and in time, and in time. */
export type KeptReheat = {
  at: number;
  piece: number | null;
  temperature: Verdict;
  time: Verdict;
  inTime: boolean;
};

/** Every reheat of a batch, piece by piece, with whether it began within the house's time of the last good look. */
export function reheatsOf(
  frame: BatchFrame,
  kitchen: Kitchen,
  lastGoodOf: (piece: number | null, before: number) => number | null,
): KeptReheat[] {
  const within = kitchen.site?.house.reheat_within_min ?? null;
  return frame.runs
    .filter(({ step }) => step === 'reheat')
    .flatMap((run) =>
      run.members.flatMap((member) => {
        const stages = run.byPiece.find(({ piece }) => piece === member.piece)?.stages;
        if (!stages?.temperature || !stages.time) return [];
        const good = lastGoodOf(member.piece, member.from);
        return [
          {
            at: restsOn(run, stages.temperature).at(-1)?.at ?? member.until ?? frame.bench.asOf,
            piece: member.piece,
            temperature: stages.temperature.verdict,
            time: stages.time.verdict,
            inTime: within === null || (good !== null && minutesBetween(good, member.from) <= within),
          },
        ];
      }),
    );
}

/** The first thing that ended a piece's deviation at or after it was found. A piece that was gone by then is gone. */
export function endOf(
  batch: string,
  piece: number | null,
  foundAt: number,
  endings: readonly Ending[],
  gone: Ends | undefined,
  reheats: readonly KeptReheat[],
  mayReturn: boolean,
): Pick<End, 'end' | 'at' | 'by'> {
  const candidates: Pick<End, 'end' | 'at' | 'by'>[] = endings
    .filter((ending) => ending.at >= foundAt && speaksOf(ending, batch, piece))
    .map(({ end, at, by }) => ({ end, at, by }));
  const left = gone?.get(piece);
  if (left) {
    const end = left.reason === 'discarded' ? 'discarded' : 'gone';
    candidates.push({ end, at: left.at, by: left.by });
  }
  for (const { at, piece: one, temperature, time, inTime } of mayReturn ? reheats : [])
    if (one === piece && at >= foundAt && temperature === 'kept' && time === 'kept' && inTime)
      candidates.push({ end: 'reheated', at, by: null });
  candidates.sort((a, b) => (a.at ?? 0) - (b.at ?? 0));
  return candidates[0] ?? { end: null, at: null, by: null };
}
