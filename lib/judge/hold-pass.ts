import { conventions } from '#lib/limits/conventions.ts';
import { isClose, low } from './compare.ts';
import { naturalHot, provesHot, type Span } from './evidence.ts';
import type { HeldTo } from './held-to.ts';
import type { JudgedReading, StepRecord } from './record.ts';

/** What one pass over a hold leaves of a piece. Instants and lengths in ms. */
export type Held = {
  piece: number | null;
  food: number; // food readings
  suspect: number;
  proving: number; // readings that can prove, at or above the limit or not
  bad: number;
  firstBad: number;
  close: boolean;
  disputed: boolean; // a value under a contested allowance
  lastProof: number; // the step's start while there is none
  longestGap: number; // without a proving reading, up to the last
  unnatural: boolean; // some proving reading had no natural one within a look of it
  logged: boolean; // a logger read the coldest place or the thin end
  lastLogged: number;
  loggerGap: number;
  loggedBelow: boolean;
};

export type HoldPass = {
  pieces: Held[]; // the batch first, then by number
  airRead: boolean;
  looked: number; // proving readings of any piece
  /** Without one: the longest stretch, the step's start to the first and the last to the end included. */
  looks: { longestGap: number; lastLook: number };
};

/*
 * A night's readings are judged again and again, so the pass keeps its tallies in one array of numbers, a row for
 * each piece. Measured beside a bare comparison of each value with the limit, an object for each row made it five
 * times slower, and a fresh array for each call ten times: hence the one array below, wiped before each pass.
 */
const FOOD = 0; // those that do not prove; the proving ones are counted in PROVING
const SUSPECT = 1;
const PROVING = 2;
const BAD = 3;
const FIRST_BAD = 4;
const CLOSE = 5;
const DISPUTED = 6;
const LAST_PROOF = 7;
const GAP = 8;
const LAST_NATURAL = 9; // -Infinity before the first
const WAITING = 10; // since when an unnatural look waits for a natural one; Infinity = none waits
const UNNATURAL = 11;
const LAST_LOGGED = 12;
const LOGGER_GAP = 13;
const LOGGED = 14;
const LOGGED_BELOW = 15;
const COLUMNS = 16;

/** A piece with a number below this has the row of its number; row 0 is the batch. */
const PLAIN = 32;

const scratch = new Float64Array(COLUMNS * PLAIN);

const isOdd = (piece: number): boolean => !(piece > 0 && piece < PLAIN && (piece | 0) === piece);

const lookMs = conventions.look_min * 60_000;

/** A proving reading of an unnatural spot is enough where a natural one of the piece lies within a look of it. */
function noteSpot(cells: Float64Array, at: number, row: number, isNatural: boolean): void {
  const waiting = cells[row + WAITING] ?? 0;
  if (isNatural) {
    cells[row + LAST_NATURAL] = at;
    if (waiting === Number.POSITIVE_INFINITY) return;
    if (at - waiting > lookMs) cells[row + UNNATURAL] = 1;
    cells[row + WAITING] = Number.POSITIVE_INFINITY;
  } else if (waiting === Number.POSITIVE_INFINITY && at - (cells[row + LAST_NATURAL] ?? 0) > lookMs)
    cells[row + WAITING] = at;
}

function noteLogger(cells: Float64Array, at: number, row: number, start: number, isBelow: boolean): void {
  const last = cells[row + LOGGED] === 1 ? (cells[row + LAST_LOGGED] ?? 0) : start;
  cells[row + LOGGER_GAP] = Math.max(cells[row + LOGGER_GAP] ?? 0, at - last);
  cells[row + LAST_LOGGED] = at;
  cells[row + LOGGED] = 1;
  if (isBelow) cells[row + LOGGED_BELOW] = 1;
}

/** A value under a contested allowance neither proves nor breaks. */
function noteBelow(cells: Float64Array, at: number, row: number, isDisputed: boolean): void {
  if (isDisputed) cells[row + DISPUTED] = 1;
  else {
    if (cells[row + BAD] === 0) cells[row + FIRST_BAD] = at;
    cells[row + BAD] = (cells[row + BAD] ?? 0) + 1;
  }
}

function held(cells: Float64Array, piece: number | null, row: number, start: number): Held {
  const cell = (column: number): number => cells[row * COLUMNS + column] ?? 0;
  return {
    piece,
    food: cell(FOOD) + cell(PROVING),
    suspect: cell(SUSPECT),
    proving: cell(PROVING),
    bad: cell(BAD),
    firstBad: cell(FIRST_BAD),
    close: cell(CLOSE) === 1,
    disputed: cell(DISPUTED) === 1,
    lastProof: cell(PROVING) > 0 ? cell(LAST_PROOF) : start,
    longestGap: cell(GAP),
    unnatural: cell(UNNATURAL) === 1 || (cell(PROVING) > 0 && cell(WAITING) !== Number.POSITIVE_INFINITY),
    logged: cell(LOGGED) === 1,
    lastLogged: cell(LOGGED) === 1 ? cell(LAST_LOGGED) : start,
    loggerGap: cell(LOGGER_GAP),
    loggedBelow: cell(LOGGED_BELOW) === 1,
  };
}

/** Where a piece's tallies stand: its number's row, or one that was given to it. */
type Rows = { given: ReadonlyMap<number, number> | null; cells: Float64Array };

/** The rows for numbers too great for a row of their own, and room for them. */
function givenRows(readings: readonly JudgedReading[]): Rows {
  const numbers = new Set<number>();
  for (const { piece } of readings) if (piece !== null) numbers.add(piece);
  const given = new Map([...numbers].sort((a, b) => a - b).map((piece, place) => [piece, place + 1]));
  return { given, cells: new Float64Array(COLUMNS * (given.size + 1)) };
}

function piecesRead({ given, cells }: Rows, start: number): Held[] {
  const numbers = given === null ? null : [...given.keys()];
  const pieces: Held[] = [];
  for (let row = 0; row * COLUMNS < cells.length; row++) {
    if (cells[row * COLUMNS + FOOD] === 0 && cells[row * COLUMNS + PROVING] === 0) continue;
    const piece = row === 0 ? null : numbers === null ? row : (numbers[row - 1] ?? null);
    pieces.push(held(cells, piece, row, start));
  }
  return pieces;
}

/** One pass over the step's readings, in order of time: what each piece was seen to do. */
export function holdPass(record: StepRecord, seen: Span, to: HeldTo): HoldPass {
  scratch.fill(0);
  return (
    passWith(record, seen, to, { given: null, cells: scratch }) ??
    passWith(record, seen, to, givenRows(record.readings)) ?? {
      pieces: [],
      airRead: false,
      looked: 0,
      looks: { longestGap: 0, lastLook: seen.start ?? 0 },
    }
  );
}

/** Null: some piece has no row here. */
function passWith(record: StepRecord, seen: Span, to: HeldTo, rows: Rows): HoldPass | null {
  const { readings } = record;
  const { order, stop } = seen;
  const { limit, disputedFrom } = to;
  const { degF, degC, nearHighF } = limit;
  const { cells, given } = rows;
  const start = seen.start ?? 0;
  let airRead = false;
  let looked = 0;
  let lastLook = start;
  let longestGap = 0;
  for (let place = seen.first; place < stop; place++) {
    const reading: JudgedReading | undefined = readings[order === null ? place : (order[place] ?? 0)];
    if (reading === undefined) continue;
    const { spot, unit, at, piece } = reading;
    if (spot === 'air') {
      airRead = true;
      continue;
    }
    if (given === null && piece !== null && isOdd(piece)) return null;
    const row = COLUMNS * (piece === null ? 0 : given === null ? piece : (given.get(piece) ?? 0));
    const value = reading.correction === null ? reading.value : low(reading);
    // Most readings lie well above: nothing below has to be asked of them.
    const isWellAbove = value > nearHighF && unit === 'degF' && (reading.accuracy ?? null) === null;
    const isBelow = !isWellAbove && value < (unit === 'degF' ? degF : degC);
    if (isBelow) noteBelow(cells, at, row, disputedFrom !== null && value >= disputedFrom[unit]);
    if (!isWellAbove && isClose(limit, value, unit, reading.accuracy)) cells[row + CLOSE] = 1;
    if (reading.suspect || spot === 'warmest') {
      cells[row + FOOD] = (cells[row + FOOD] ?? 0) + 1;
      if (reading.suspect) cells[row + SUSPECT] = (cells[row + SUSPECT] ?? 0) + 1;
      continue;
    }
    const proving = cells[row + PROVING] ?? 0;
    if (proving === 0) {
      cells[row + LAST_PROOF] = start;
      cells[row + LAST_NATURAL] = Number.NEGATIVE_INFINITY;
      cells[row + WAITING] = Number.POSITIVE_INFINITY;
    }
    const gap = at - (cells[row + LAST_PROOF] ?? 0);
    if (gap > (cells[row + GAP] ?? 0)) cells[row + GAP] = gap;
    cells[row + PROVING] = proving + 1;
    cells[row + LAST_PROOF] = at;
    const isNatural = naturalHot(spot);
    noteSpot(cells, at, row, isNatural);
    if (isNatural && reading.source === 'logger') noteLogger(cells, at, row, start, isBelow);
    if (at - lastLook > longestGap) longestGap = at - lastLook;
    lastLook = at;
    looked++;
  }
  return {
    pieces: piecesRead(rows, start),
    airRead,
    looked,
    looks: { longestGap: Math.max(longestGap, seen.until - lastLook), lastLook },
  };
}

/** 0, 1, 2 …: copying a stretch of it is many times quicker than counting it up again. */
const counting: number[] = [];

/** Indices of the readings that can prove, in order of time. */
export function proofsOf(record: StepRecord, seen: Span, looked: number): number[] {
  const { first, stop, order } = seen;
  if (looked === stop - first && order === null) {
    for (let next = counting.length; next < stop; next++) counting.push(next);
    return counting.slice(first, stop);
  }
  const proofs: number[] = [];
  for (let place = first; place < stop; place++) {
    const index = order === null ? place : (order[place] ?? 0);
    const reading = record.readings[index];
    if (reading !== undefined && !reading.suspect && provesHot(reading.spot)) proofs.push(index);
  }
  return proofs;
}
