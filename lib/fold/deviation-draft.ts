import type { BatchFrame } from './batch-frame.ts';
import type { Check, Deviation, Kitchen, Look, Piece } from './book.ts';
import type { Ending, Written } from './decided.ts';
import type { KeptReheat } from './ends.ts';
import type { Opened } from './opened.ts';

/** What the deviations of one fold are taken from. */
export type DeviationSources = {
  frames: ReadonlyMap<string, BatchFrame>;
  kitchen: Kitchen;
  looks: ReadonlyMap<string, Look>;
  checks: readonly Check[];
  written: Written;
  endings: readonly Ending[];
  /** Ends of pieces by batch, as far as anyone knows (also after the moment of the fold). */
  gone: ReadonlyMap<string, ReadonlyMap<number | null, NonNullable<Piece['end']>>>;
  reheats: ReadonlyMap<string, KeptReheat[]>;
  asOf: number;
};

/** A deviation with the pieces that it blocks, and from when. */
export type Blocking = { deviation: Deviation; batch: string; pieces: (number | null)[]; from: number };

/** A deviation before people's entries about it are known. */
export type Draft = Omit<
  Deviation,
  'ends' | 'state' | 'unconfirmed' | 'actions' | 'decisions' | 'outLongestMin'
>;

export const blank = {
  aliases: [] as string[],
  entry: null,
  batch: null,
  pieces: null,
  step: null,
  stage: null,
  run: null,
  equipment: null,
  probe: null,
  section: null,
  found: null,
  lastGood: null,
  since: null,
  untilAt: null,
  outShortestMin: 0,
};

/** What the judge opened, as a deviation. */
export function fromJudge(opened: Opened): Draft {
  const { run, frame, piece } = opened;
  return {
    ...blank,
    aliases: [],
    ref: opened.ref,
    opened: 'by_the_judge',
    batch: frame.id,
    pieces: piece === null ? null : [piece],
    step: run.step,
    stage: opened.stage,
    run: run.key,
    equipment: opened.found?.equipment ?? run.equipment,
    section: opened.section,
    foundAt: opened.foundAt,
    found: opened.found,
    lastGood: opened.lastGood,
    since: opened.since,
    untilAt: opened.untilAt,
    outShortestMin: opened.outShortestMin,
  };
}
