import type { Spot } from '#shared/entries/step-name.ts';
import type { JudgedReading, StepRecord } from './record.ts';

/**
 * Which readings belong to a step, in which order, and what their spots can prove. Heat enters and leaves at the
 * surface, so a thin end proves that a piece is hot and a thick part that it is cold (docs/judge.md, section 2).
 */

/** Hot holding: every food spot but the warmest proves; the warmest can only break. */
export const provesHot = (spot: Spot | null): boolean => spot !== 'warmest' && spot !== 'air';
export const naturalHot = (spot: Spot | null): boolean => spot === 'coldest' || spot === 'edge';

/** Cold holding is the mirror: the coldest place can only break. The thin end gets warm first, so a logger there sees it. */
export const provesCold = (spot: Spot | null): boolean => spot !== 'coldest' && spot !== 'air';
export const naturalCold = (spot: Spot | null): boolean => spot === 'warmest';

/** Cook and reheat: the inside has to be hot. */
export const provesHeated = (spot: Spot | null): boolean =>
  spot === 'coldest' || spot === 'core' || spot === null;
export const naturalHeated = (spot: Spot | null): boolean => spot === 'coldest' || spot === 'core';

/** Cooling: the inside has to be cold. */
export const provesCooled = (spot: Spot | null): boolean =>
  spot === 'warmest' || spot === 'core' || spot === null;
export const naturalCooled = (spot: Spot | null): boolean => spot === 'warmest' || spot === 'core';

/** The part of the record that is seen: its bounds in time and, when the entries were out of order, their order. */
export type Span = {
  start: number | null; // the step's start; null = neither given nor read
  end: number | null; // null = it goes on, as far as is seen
  until: number; // end, or as_of while it goes on
  /** Indices by time, equal moments by index; null = the readings stand in order already. */
  order: readonly number[] | null;
  first: number; // position of the first reading at or after the start
  stop: number; // position after the last reading at or before `until`
};

/** Whether the readings at the positions `from` to `to` (not included) stand in order of time. */
export function isInOrder(readings: readonly JudgedReading[], from: number, to: number): boolean {
  // The reading itself is carried on, not its instant: the engine would copy that at each turn.
  let previous: JudgedReading | undefined;
  for (let place = Math.max(from, 0); place < to; place++) {
    const reading = readings[place];
    if (reading === undefined) continue;
    if (previous !== undefined && reading.at < previous.at) return false;
    previous = reading;
  }
  return true;
}

// Entries arrive late, so a record may be out of order; the sort finds the ordered runs and merges them.
const byTime = (readings: readonly JudgedReading[]): number[] =>
  readings.map((_, index) => index).sort((a, b) => (readings[a]?.at ?? 0) - (readings[b]?.at ?? 0) || a - b);

/** Position of the first reading at or after `at` (or, with `past`, after it). */
function position(
  readings: readonly JudgedReading[],
  order: Span['order'],
  at: number,
  past: boolean,
): number {
  let from = 0;
  let to = readings.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    const t = readings[order === null ? middle : (order[middle] ?? 0)]?.at ?? 0;
    if (past ? t <= at : t < at) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** When the step ended, as far as is seen at `asOf`; null = it goes on. */
export const endSeen = ({ end, asOf }: StepRecord): number | null =>
  end !== null && end <= asOf ? end : null;

function spanIn(record: StepRecord, order: Span['order']): Span {
  const { readings } = record;
  const end = endSeen(record);
  const until = end ?? record.asOf;
  const earliest = readings[order === null ? 0 : (order[0] ?? 0)];
  const stop = position(readings, order, until, true);
  const start = record.start ?? (earliest !== undefined && stop > 0 ? earliest.at : null);
  const first = start === null ? 0 : position(readings, order, start, false);
  return { start, end, until, order, first: Math.min(first, stop), stop };
}

/** What of the record is seen at `asOf`: later readings are not, and neither is a later end. */
export function span(record: StepRecord): Span {
  const { readings } = record;
  return spanIn(record, isInOrder(readings, 0, readings.length) ? null : byTime(readings));
}

/** As `span`, of readings that are only taken to stand in order: whoever asks has to see that they do. */
export const spanAsWritten = (record: StepRecord): Span => spanIn(record, null);

/** The readings of one piece, as indices of the record, in order of time. */
export type PieceLooks = {
  piece: number | null; // null = the batch, which speaks for no numbered piece
  before: number[]; // its last food readings before the step: all those of that moment
  looks: number[]; // its food readings in the step
  suspect: number; // how many of `looks` are suspect
};

/** A piece of which nothing was read. */
export const unreadPiece = (piece: number | null): PieceLooks => ({
  piece,
  before: [],
  looks: [],
  suspect: 0,
});

/** A batch has few pieces, so a group is found by its number; only numbers that are none, or too great, are looked up. */
const PLAIN = 64;

class Groups {
  private readonly plain: (PieceLooks | undefined)[] = new Array(PLAIN).fill(undefined);
  private readonly others = new Map<number | null, PieceLooks>();

  of(piece: number | null): PieceLooks {
    const isPlain = piece !== null && piece > 0 && piece < PLAIN && (piece | 0) === piece;
    const known = isPlain ? this.plain[piece] : this.others.get(piece);
    if (known !== undefined) return known;
    const group = unreadPiece(piece);
    if (isPlain) this.plain[piece] = group;
    else this.others.set(piece, group);
    return group;
  }

  inOrder(): PieceLooks[] {
    const plain = this.plain.filter((group) => group !== undefined);
    if (this.others.size === 0) return plain;
    return [...this.others.values(), ...plain].sort((a, b) => (a.piece ?? 0) - (b.piece ?? 0));
  }
}

/** Readings grouped by piece, the batch first, then by number; pieces that were read before the step only have no `looks`. */
export function byPiece(record: StepRecord, seen: Span): { pieces: PieceLooks[]; airRead: boolean } {
  const groups = new Groups();
  const { readings } = record;
  let airRead = false;
  for (let place = 0; place < seen.stop; place++) {
    const index = seen.order === null ? place : (seen.order[place] ?? 0);
    const reading = readings[index];
    if (reading === undefined) continue;
    if (reading.spot === 'air') {
      if (place >= seen.first) airRead = true;
      continue;
    }
    const group = groups.of(reading.piece);
    if (place >= seen.first) {
      group.looks.push(index);
      if (reading.suspect) group.suspect++;
    } else {
      const last = group.before[0];
      if (last !== undefined && (readings[last]?.at ?? 0) < reading.at) group.before.length = 0;
      group.before.push(index);
    }
  }
  return { pieces: groups.inOrder(), airRead };
}

/** Those of `looks` (indices in order of time) that were read at the moment `at`; found by halving, not by walking. */
export function atMoment(record: StepRecord, looks: readonly number[], at: number | null): number[] {
  if (at === null) return [];
  const from = firstAtOrAfter(record, looks, at);
  let past = from;
  while (record.readings[looks[past] ?? -1]?.at === at) past++;
  return looks.slice(from, past);
}

/** Position in `looks` of the first at or after `at`. */
export function firstAtOrAfter(record: StepRecord, looks: readonly number[], at: number): number {
  let from = 0;
  let to = looks.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((record.readings[looks[middle] ?? -1]?.at ?? Number.POSITIVE_INFINITY) < at) from = middle + 1;
    else to = middle;
  }
  return from;
}

/** Reason keys for suspect readings among a piece's looks: some, all, or none. */
export function suspects({ suspect, looks }: PieceLooks): 'suspect_only' | 'suspect_reading' | null {
  if (suspect === 0) return null;
  return suspect === looks.length ? 'suspect_only' : 'suspect_reading';
}

/** The same of a piece that was read before the step only. */
export const suspectsBefore = (record: StepRecord, { piece, before }: PieceLooks) =>
  suspects({
    piece,
    before: [],
    looks: before,
    suspect: before.filter((index) => record.readings[index]?.suspect === true).length,
  });
