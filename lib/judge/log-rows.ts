import { parse } from 'csv-parse/sync';
import { type Spot, spot } from '#shared/entries/step-name.ts';
import { instant, localDate, msOf } from '#shared/time.ts';
import { type Unit, unit } from '#shared/units.ts';

/** The columns of a log of readings, in the order of its first line; the first six are required. */
export const logColumns = [
  'batch',
  'food',
  'step',
  'time',
  'value',
  'unit',
  'spot',
  'piece',
  'probe',
  'held_s',
  'equipment',
  'day_one',
] as const;
export type LogColumn = (typeof logColumns)[number];
const required: readonly LogColumn[] = logColumns.slice(0, 6);

/** The steps that a log can name. */
export const logSteps = [
  'cook',
  'rest',
  'hot_hold',
  'cutting',
  'service',
  'transport',
  'cooling',
  'cold_hold',
  'reheat',
  'time_control',
] as const;
export type LogStep = (typeof logSteps)[number];

/**
 * What is wrong with a log, as data: words are added at the edge from the message key. `line` counts from the
 * headings (line 1); 0 = of an option, whose name is the column.
 */
export type LogProblem = {
  line: number;
  column: string;
  problem: string;
  values: Record<string, string | number>;
};

/** One line of a log, read. */
export type LogRow = {
  line: number;
  batch: string;
  food: string;
  step: LogStep;
  time: string; // as it was written, with its offset
  at: number;
  value: number;
  unit: Unit;
  spot: Spot | null;
  piece: number | null;
  probe: string | null;
  heldS: number | null;
  dayOne: string | null; // the calendar day written on the food as its first
};

const header = logColumns.join(',');
const decimal = /^[+-]?(\d+\.?\d*|\.\d+)$/;

/** A spreadsheet's typographic minus is a minus. */
const numberOf = (text: string): number | null => {
  const plain = text.replace('\u2212', '-');
  return decimal.test(plain) ? Number(plain) : null;
};

type Cells = Record<LogColumn, string>;
type Wrong = Omit<LogProblem, 'line' | 'column'> | null;

const wrong = (problem: string, typed: string, choices?: readonly string[]): Wrong => ({
  problem,
  values: choices === undefined ? { typed } : { typed, choices: choices.join(', ') },
});

/** What a filled cell must be; null = nothing is wrong with it. */
const checks: Partial<Record<LogColumn, (typed: string) => Wrong>> = {
  step: (typed) => ((logSteps as readonly string[]).includes(typed) ? null : wrong('step', typed, logSteps)),
  time: (typed) => (instant.safeParse(typed).success ? null : wrong('time', typed)),
  value: (typed) => (numberOf(typed) === null ? wrong('value', typed) : null),
  unit: (typed) => (unit.safeParse(typed).success ? null : wrong('unit', typed)),
  spot: (typed) => (spot.safeParse(typed).success ? null : wrong('spot', typed, spot.options)),
  piece: (typed) => (/^\d{1,9}$/.test(typed) && Number(typed) > 0 ? null : wrong('piece', typed)),
  held_s: (typed) => ((numberOf(typed) ?? -1) >= 0 ? null : wrong('held_s', typed)),
  day_one: (typed) => (localDate.safeParse(typed).success ? null : wrong('day_one', typed)),
};

function cellProblem(column: LogColumn, typed: string): Wrong {
  if (typed !== '') return checks[column]?.(typed) ?? null;
  return required.includes(column) ? { problem: 'blank', values: {} } : null;
}

const rowOf = (line: number, cells: Cells): LogRow => ({
  line,
  batch: cells.batch,
  food: cells.food,
  step: cells.step as LogStep,
  time: cells.time,
  at: msOf(cells.time),
  value: numberOf(cells.value) ?? 0,
  unit: unit.parse(cells.unit),
  spot: cells.spot === '' ? null : spot.parse(cells.spot),
  piece: cells.piece === '' ? null : Number(cells.piece),
  probe: cells.probe === '' ? null : cells.probe,
  heldS: cells.held_s === '' ? null : numberOf(cells.held_s),
  dayOne: cells.day_one === '' ? null : cells.day_one,
});

/** Values of one line by column, in the order in which the log names its columns. */
type Line = { line: number; values: string[] };

const options = {
  bom: true,
  trim: true,
  relax_column_count: true,
  relax_quotes: true,
  skip_empty_lines: true,
};

type Parsed = { record: string[]; info: { lines: number } };

const linesOf = (parsed: Parsed[]): Line[] =>
  parsed.map(({ record, info }) => ({
    // The parser counts to the line on which a record ends; one with a line break inside begins earlier.
    line: info.lines - record.reduce((breaks, value) => breaks + (value.split('\n').length - 1), 0),
    values: record,
  }));

/** The text in lines of values. A quote that is never closed is told, and the rest is read as if it were none. */
function split(text: string): { lines: Line[]; open: { line: number } | null } {
  let last = 0;
  const remember = (record: string[], { lines }: { lines: number }): string[] => {
    last = lines;
    return record;
  };
  try {
    const parsed = parse(text, { ...options, info: true, on_record: remember as never });
    return { lines: linesOf(parsed as unknown as Parsed[]), open: null };
  } catch {
    const plain = linesOf(parse(text, { ...options, info: true, quote: false }) as unknown as Parsed[]);
    return { lines: plain, open: { line: plain.find(({ line }) => line > last)?.line ?? last + 1 } };
  }
}

function headerProblems(names: readonly string[]): LogProblem[] {
  const at = { line: 1 };
  const known = logColumns as readonly string[];
  const named = names.flatMap((name, place): LogProblem[] => {
    if (!known.includes(name))
      return [{ ...at, column: name, problem: 'header_unknown', values: { typed: name, header } }];
    return names.indexOf(name) < place ? [{ ...at, column: name, problem: 'header_twice', values: {} }] : [];
  });
  const missing = required.filter((name) => !names.includes(name));
  return [
    ...missing.map(
      (column): LogProblem => ({ ...at, column, problem: 'header_missing', values: { header } }),
    ),
    ...named,
  ];
}

function lineProblems({ line, values }: Line, columns: readonly LogColumn[]): LogProblem[] {
  const problems = columns.flatMap((column, place): LogProblem[] => {
    const found = cellProblem(column, values[place] ?? '');
    return found === null ? [] : [{ line, column, ...found }];
  });
  if (values.length > columns.length)
    problems.push({
      line,
      column: columns.at(-1) ?? 'batch',
      problem: 'too_many_fields',
      values: { count: values.length, most: columns.length },
    });
  return problems;
}

/** One batch is one food: a line that calls it otherwise is told, for nobody can guess which was meant. */
function foodProblems(rows: readonly LogRow[]): LogProblem[] {
  const first = new Map<string, LogRow>();
  return rows.flatMap((row): LogProblem[] => {
    const known = first.get(row.batch);
    if (known === undefined) first.set(row.batch, row);
    if (known === undefined || known.food === row.food) return [];
    const values = { batch: row.batch, first: known.food, line: known.line, typed: row.food };
    return [{ line: row.line, column: 'food', problem: 'food_changed', values }];
  });
}

const columnOrder = (column: string): number => {
  const place = (logColumns as readonly string[]).indexOf(column);
  return place < 0 ? logColumns.length : place;
};

const inOrder = (problems: LogProblem[]): LogProblem[] =>
  problems.sort((a, b) => a.line - b.line || columnOrder(a.column) - columnOrder(b.column));

/**
 * Reads a log of readings: its rows, or every problem of every line, in order of line and then of the headings.
 * With any problem there are no rows to judge, for a log is not judged in part.
 */
export function readLog(text: string): { rows: LogRow[]; problems: LogProblem[] } {
  const refused = (...problems: LogProblem[]) => ({ rows: [], problems: inOrder(problems) });
  const { lines, open } = split(text);
  const [headings, ...body] = lines;
  if (headings === undefined)
    return refused({ line: 1, column: 'batch', problem: 'empty_file', values: { header } });
  const quoteProblems: LogProblem[] = [];
  if (open !== null) {
    const values = lines.find(({ line }) => line === open.line)?.values ?? [];
    const place = Math.max(
      0,
      values.findIndex((value) => value.startsWith('"')),
    );
    const column = headings.values[place] ?? 'batch';
    quoteProblems.push({ line: open.line, column, problem: 'quote_open', values: {} });
  }
  const inHeader = headerProblems(headings.values);
  if (inHeader.length > 0) return refused(...inHeader, ...quoteProblems);
  if (body.length === 0)
    return refused(...quoteProblems, { line: 1, column: 'batch', problem: 'no_rows', values: {} });
  const columns = headings.values as LogColumn[];
  const problems = [
    ...quoteProblems,
    ...body.flatMap((line) => lineProblems(line, columns).filter(({ line: at }) => at !== open?.line)),
  ];
  const cellsOf = ({ values }: Line): Cells => {
    const cells = Object.fromEntries(logColumns.map((column) => [column, ''])) as Cells;
    columns.forEach((column, place) => {
      cells[column] = values[place] ?? '';
    });
    return cells;
  };
  const bad = new Set(problems.map(({ line }) => line));
  const rows = body.filter(({ line }) => !bad.has(line)).map((line) => rowOf(line.line, cellsOf(line)));
  const all = inOrder([...problems, ...foodProblems(rows)]);
  return { rows: all.length > 0 ? [] : rows, problems: all };
}
