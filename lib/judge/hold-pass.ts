import { conventions } from '#lib/limits/conventions.ts';
import { high, isClose, low } from './compare.ts';
import { isInOrder, type Span, span, spanAsWritten } from './evidence.ts';
import { type HeldTo, type HoldSide, isBeyond, lineOf } from './held-to.ts';
import type { JudgedReading, StepRecord } from './record.ts';

/** What one pass over a hold leaves of a piece. Instants and lengths in ms. */
export type Held = {
  piece: number | null;
  sound: boolean; // some food reading is not suspect
  suspect: boolean; // some food reading is
  proven: boolean; // some reading can prove, at or above the limit or not
  bad: boolean;
  firstBad: number;
  close: boolean;
  disputed: boolean; // a value under a contested allowance
  lastProof: number; // the step's start while there is none
  longestGap: number; // without a proving reading, up to the last
  unnatural: boolean; // some proving reading had no natural one within a look of it
  logged: boolean; // a logger read the place that goes first, or the thin end
  lastLogged: number; // the step's start while there is none
  loggerGap: number;
  loggedBelow: boolean;
};

export type HoldPass = {
  seen: Span;
  pieces: Held[]; // the batch first, then by number
  airRead: boolean;
  looked: number; // proving readings of any piece
  /** Without one: the longest stretch, the step's start to the first and the last to the end included. */
  looks: { longestGap: number; lastLook: number };
};

/*
 * A night's readings are judged again and again, so the pass keeps its tallies in one array of numbers, a row for
 * each piece: an object for each row, or a fresh array for each call, is several times slower. The array below is
 * therefore kept, and each pass lays the blank one over it. Its instants count from the step's start, so that 0
 * stands for the start; and a difference is a plain number to the engine, where an instant as it comes out of a
 * reading is an object that it copies at each turn.
 */
const FIRST_BAD = 0; // Infinity = none
const LAST_PROOF = 1;
const GAP = 2; // -1 before the first proving reading
const LAST_NATURAL = 3; // -Infinity before the first
const WAITING = 4; // since when an unnatural look waits for a natural one; Infinity = none waits
const LAST_LOGGED = 5;
const LOGGER_GAP = 6; // -1 before the first reading of a logger
const SEEN = 7; // the marks below
const COLUMNS = 8;

/** What was seen of a piece at any of its readings, as bits of one number. */
const SOUND = 1; // not set by proving readings: those show in GAP
const SUSPECT = 2;
const CLOSE = 4;
const DISPUTED = 8;
const UNNATURAL = 16;
const LOGGED_BELOW = 32;

/** A piece with a number below this has the row of its number; row 0 is the batch. */
const PLAIN = 32;

function blankCells(rows: number): Float64Array {
  const cells = new Float64Array(COLUMNS * rows);
  for (let row = 0; row < cells.length; row += COLUMNS) {
    cells[row + FIRST_BAD] = Number.POSITIVE_INFINITY;
    cells[row + GAP] = -1;
    cells[row + LAST_NATURAL] = Number.NEGATIVE_INFINITY;
    cells[row + WAITING] = Number.POSITIVE_INFINITY;
    cells[row + LOGGER_GAP] = -1;
  }
  return cells;
}

const blank = blankCells(PLAIN);
const scratch = blankCells(PLAIN);

const isOdd = (piece: number): boolean => !(piece > 0 && piece < PLAIN && (piece | 0) === piece);

const lookMs = conventions.look_min * 60_000;

function mark(cells: Float64Array, row: number, seen: number): void {
  cells[row + SEEN] = (cells[row + SEEN] ?? 0) | seen;
}

/** A proving reading of an unnatural spot is enough where a natural one of the piece lies within a look of it. */
function endWaiting(cells: Float64Array, row: number, at: number): void {
  if (at - (cells[row + WAITING] ?? 0) > lookMs) mark(cells, row, UNNATURAL);
  cells[row + WAITING] = Number.POSITIVE_INFINITY;
}

function noteLogger(cells: Float64Array, row: number, at: number, isBelow: boolean): void {
  cells[row + LOGGER_GAP] = Math.max(cells[row + LOGGER_GAP] ?? 0, at - (cells[row + LAST_LOGGED] ?? 0));
  cells[row + LAST_LOGGED] = at;
  if (isBelow) mark(cells, row, LOGGED_BELOW);
}

/** A value not well inside the limit; under a contested allowance it neither proves nor breaks. */
function noteLow(cells: Float64Array, row: number, at: number, reading: JudgedReading, to: HeldTo): boolean {
  const { disputedFrom, side } = to;
  const limit = lineOf(to, reading.spot);
  const value = side.isHot ? low(reading) : high(reading);
  const { unit } = reading;
  if (isClose(limit, value, unit, reading.accuracy)) mark(cells, row, CLOSE);
  if (!isBeyond(side, limit, value, unit)) return false;
  if (disputedFrom !== null && value >= disputedFrom[unit]) mark(cells, row, DISPUTED);
  else if (cells[row + FIRST_BAD] === Number.POSITIVE_INFINITY) cells[row + FIRST_BAD] = at;
  return true;
}

function held(cells: Float64Array, row: number, piece: number | null, start: number): Held {
  const cell = (column: number): number => cells[row + column] ?? 0;
  const seen = cell(SEEN);
  const proven = cell(GAP) >= 0;
  return {
    piece,
    sound: proven || (seen & SOUND) !== 0,
    suspect: (seen & SUSPECT) !== 0,
    proven,
    bad: cell(FIRST_BAD) !== Number.POSITIVE_INFINITY,
    firstBad: start + cell(FIRST_BAD),
    close: (seen & CLOSE) !== 0,
    disputed: (seen & DISPUTED) !== 0,
    lastProof: start + cell(LAST_PROOF),
    longestGap: Math.max(cell(GAP), 0),
    unnatural: (seen & UNNATURAL) !== 0 || cell(WAITING) !== Number.POSITIVE_INFINITY,
    logged: cell(LOGGER_GAP) >= 0,
    lastLogged: start + cell(LAST_LOGGED),
    loggerGap: Math.max(cell(LOGGER_GAP), 0),
    loggedBelow: (seen & LOGGED_BELOW) !== 0,
  };
}

/** Where a piece's tallies stand: its number's row, or one that was given to it. */
type Rows = { given: ReadonlyMap<number, number> | null; cells: Float64Array };

function plainRows(): Rows {
  scratch.set(blank);
  return { given: null, cells: scratch };
}

/** The rows for numbers too great for a row of their own, and room for them. */
function givenRows(readings: readonly JudgedReading[]): Rows {
  const numbers = new Set<number>();
  for (const { piece } of readings) if (piece !== null) numbers.add(piece);
  const given = new Map([...numbers].sort((a, b) => a - b).map((piece, place) => [piece, place + 1]));
  return { given, cells: blankCells(given.size + 1) };
}

function piecesRead({ given, cells }: Rows, start: number): Held[] {
  const numbers = given === null ? null : [...given.keys()];
  const pieces: Held[] = [];
  for (let row = 0; row * COLUMNS < cells.length; row++) {
    const from = row * COLUMNS;
    if (cells[from + GAP] === -1 && cells[from + SEEN] === 0) continue;
    const piece = row === 0 ? null : numbers === null ? row : (numbers[row - 1] ?? null);
    pieces.push(held(cells, from, piece, start));
  }
  return pieces;
}

/** One pass over the step's readings, in order of time: what each piece was seen to do. */
export function holdPass(record: StepRecord, to: HeldTo): HoldPass {
  const { readings } = record;
  const written = spanAsWritten(record);
  const outside =
    isInOrder(readings, 0, written.first + 1) && isInOrder(readings, written.stop - 1, readings.length);
  // The order inside the step is looked at by the pass itself, for a pass of its own costs a fifth of it.
  const inOrder = outside ? passOver(record, written, to) : null;
  return inOrder ?? passOver(record, span(record), to) ?? nothingSeen(span(record));
}

const nothingSeen = (seen: Span): HoldPass => ({
  seen,
  pieces: [],
  airRead: false,
  looked: 0,
  looks: { longestGap: 0, lastLook: seen.start ?? 0 },
});

/** Null: the readings were taken to stand in order, and do not. */
function passOver(record: StepRecord, seen: Span, to: HeldTo): HoldPass | null {
  const found = passWith(record, seen, to, plainRows());
  if (found !== 'no_row') return found;
  const withRows = passWith(record, seen, to, givenRows(record.readings));
  return withRows === 'no_row' ? null : withRows;
}

function passWith(record: StepRecord, seen: Span, to: HeldTo, rows: Rows): HoldPass | 'no_row' | null {
  const { readings } = record;
  const { order, stop } = seen;
  const { cells, given } = rows;
  const { limit, surface } = to;
  const { isHot, surest, onlyBreaks } = to.side;
  // Past this nothing has to be asked of a value, whatever its unit and spot: above it hot, below it cold.
  const wellInside = isHot
    ? Math.max(
        limit.nearHighF,
        limit.nearHighC,
        surface?.nearHighF ?? Number.NEGATIVE_INFINITY,
        surface?.nearHighC ?? Number.NEGATIVE_INFINITY,
      )
    : Math.min(limit.nearLowF, limit.nearLowC);
  const start = seen.start ?? 0;
  let airRead = false;
  let looked = 0;
  let last = 0;
  let lastLook = 0;
  let longestGap = 0;
  for (let place = seen.first; place < stop; place++) {
    const reading: JudgedReading | undefined = readings[order === null ? place : (order[place] ?? 0)];
    if (reading === undefined) continue;
    const { spot, piece } = reading;
    const at = reading.at - start;
    if (at < last) return null;
    last = at;
    if (spot === 'air') {
      airRead = true;
      continue;
    }
    if (given === null && piece !== null && isOdd(piece)) return 'no_row';
    const row = COLUMNS * (piece === null ? 0 : given === null ? piece : (given.get(piece) ?? 0));
    const isPlain =
      (isHot ? reading.value > wellInside : reading.value < wellInside) &&
      reading.correction === null &&
      (reading.accuracy ?? null) === null;
    const isBelow = !isPlain && noteLow(cells, row, at, reading, to);
    if (reading.suspect || spot === onlyBreaks) {
      mark(cells, row, reading.suspect ? SUSPECT : SOUND);
      continue;
    }
    const gap = at - (cells[row + LAST_PROOF] ?? 0);
    if (gap > (cells[row + GAP] ?? 0)) cells[row + GAP] = gap;
    cells[row + LAST_PROOF] = at;
    if (reading.source === 'logger' && (spot === surest || spot === 'edge'))
      noteLogger(cells, row, at, isBelow);
    if (spot === surest || (isHot && spot === 'edge')) {
      cells[row + LAST_NATURAL] = at;
      if (cells[row + WAITING] !== Number.POSITIVE_INFINITY) endWaiting(cells, row, at);
    } else if (
      cells[row + WAITING] === Number.POSITIVE_INFINITY &&
      at - (cells[row + LAST_NATURAL] ?? 0) > lookMs
    )
      cells[row + WAITING] = at;
    if (at - lastLook > longestGap) longestGap = at - lastLook;
    lastLook = at;
    looked++;
  }
  return {
    seen,
    pieces: piecesRead(rows, start),
    airRead,
    looked,
    looks: { longestGap: Math.max(longestGap, seen.until - start - lastLook), lastLook: start + lastLook },
  };
}

/** 0, 1, 2 …: copying a stretch of it is many times quicker than counting it up again. */
const counting: number[] = [];

/** Indices of the readings that can prove, in order of time. */
export function proofsOf(record: StepRecord, seen: Span, looked: number, side: HoldSide): number[] {
  const { first, stop, order } = seen;
  if (looked === stop - first && order === null) {
    for (let next = counting.length; next < stop; next++) counting.push(next);
    return counting.slice(first, stop);
  }
  const proofs: number[] = [];
  for (let place = first; place < stop; place++) {
    const index = order === null ? place : (order[place] ?? 0);
    const reading = record.readings[index];
    if (reading === undefined || reading.suspect || reading.spot === 'air') continue;
    if (reading.spot !== side.onlyBreaks) proofs.push(index);
  }
  return proofs;
}
