import { type Standing as JudgedStanding, type StandingEvent, standing } from '#lib/judge/standing.ts';
import type { BatchFrame } from './batch-frame.ts';
import type { Kitchen } from './book.ts';
import type { Ending } from './decided.ts';
import type { Blocking } from './deviation-draft.ts';
import type { KeptReheat } from './ends.ts';
import { originsOf, pieceName } from './lineage.ts';

export type StandingSources = {
  frames: ReadonlyMap<string, BatchFrame>;
  kitchen: Kitchen;
  blocking: readonly Blocking[];
  endings: readonly Ending[];
  reheats: ReadonlyMap<string, KeptReheat[]>;
  asOf: number;
};

/**
 * Which pieces may be served (docs/judge.md 4.10), batch by batch: a batch made of a piece that was blocked when
 * it was made begins blocked, and needs a decision of its own.
 */
export class Standings {
  private readonly sources: StandingSources;
  private readonly events = new Map<string, StandingEvent[]>();

  constructor(sources: StandingSources) {
    this.sources = sources;
  }

  /** Standing of one piece of a batch as of the fold's moment. */
  of(batch: string, piece: number | null): JudgedStanding {
    return this.at(batch, this.sources.asOf).get(pieceName(batch, piece)) ?? 'serve';
  }

  private at(batch: string, asOf: number): ReadonlyMap<string, JudgedStanding> {
    return standing(this.eventsOf(batch), asOf);
  }

  private eventsOf(batch: string): StandingEvent[] {
    const known = this.events.get(batch);
    if (known) return known;
    this.events.set(batch, []); // a circle of sources finds nothing and ends here
    const frame = this.sources.frames.get(batch);
    const made = frame ? this.make(frame) : [];
    this.events.set(batch, made);
    return made;
  }

  private make(frame: BatchFrame): StandingEvent[] {
    const names = (pieces: readonly (number | null)[] | null): string[] =>
      (pieces ?? frame.steps.pieces).map((piece) => pieceName(frame.id, piece));
    const { blocking, endings, reheats, kitchen } = this.sources;
    const mayReturn = kitchen.site?.house.reheat_may_return ?? false;
    const blocks = blocking
      .filter(({ batch }) => batch === frame.id)
      .map(({ deviation, pieces, from }): StandingEvent => {
        const common = { at: from, pieces: names(pieces) };
        return deviation.opened === 'by_hand' || deviation.stage === null
          ? { ...common, type: 'deviation' }
          : { ...common, type: 'stage', stage: deviation.stage, verdict: 'broken' };
      });
    const decisions = endings
      .filter(({ batch, end }) => batch === frame.id && end !== 'discarded')
      // Who may decide was asked of the house's rule before: its lead counts here as its manager does.
      .map(
        ({ at, pieces, entry }): StandingEvent => ({
          at,
          type: 'decision',
          pieces: names(pieces),
          role: 'manager',
          reason: entry,
          allowed: true,
        }),
      );
    // Heat ends what heat can mend: food past its date is not made younger by it.
    const isPast = (piece: number | null, at: number): boolean =>
      blocking.some(
        ({ batch, deviation, pieces, from }) =>
          batch === frame.id && deviation.stage === 'date_mark' && from <= at && pieces.includes(piece),
      );
    const warmed = (reheats.get(frame.id) ?? []).filter(({ piece, at }) => !isPast(piece, at));
    const returned = warmed.map(
      ({ at, piece, temperature, time, inTime }): StandingEvent => ({
        at,
        type: 'reheat',
        pieces: names([piece]),
        temperature,
        time,
        allowed: mayReturn,
        in_time: inTime,
      }),
    );
    const begin: StandingEvent = { at: Number.NEGATIVE_INFINITY, type: 'batch', pieces: names(null) };
    const inherited: StandingEvent[] = this.madeOfBlocked(frame)
      ? [{ at: frame.at, type: 'deviation', pieces: names(null) }]
      : [];
    return [begin, ...inherited, ...blocks, ...decisions, ...returned];
  }

  /** Whether a piece that this batch was made of was blocked then. Pieces that were used up by it count as well. */
  private madeOfBlocked(frame: BatchFrame): boolean {
    return originsOf(frame, this.sources.frames).some(({ batch, pieces }) => {
      const then = this.at(batch, frame.at);
      return pieces.some((piece) => then.get(pieceName(batch, piece)) === 'do_not_serve');
    });
  }
}
