import { Page, Path, Svg, Text, View } from '@react-pdf/renderer';
import { createElement as h, type ReactElement } from 'react';
import { minutesBetween, msOf } from '#shared/time.ts';
import type { BatchDoc, ReadingDoc, RunDoc } from '../day-schema.ts';
import type { Printed } from '../printed.ts';
import type { SheetNames } from '../sheet-names.ts';
import { belowPage, pageFoot, pageHead, pageNumber } from './frame.ts';
import { inner, margin, type Paper, pageSize } from './paper.ts';
import { hair, style } from './style.ts';

/**
 * Every reading of the day with its hand, place and thermometer, in two newspaper columns. Rows have one height, so
 * the pages are cut here and a column is a handful of texts: a node per cell would make the renderer many times
 * slower.
 */
const rowHeights = [12, 11.5, 11] as const; // pt, the roomiest first
const headingHeight = 20;
const gutter = 18;

type Line =
  | { kind: 'heading'; words: string }
  | { kind: 'across'; words: string } // over all columns: a gap, or a note that is too long for its own
  | { kind: 'reading'; cells: string[]; beyond: boolean; suspect: boolean };

/** Signs that fit into the note's column. */
const mostNote = 9;

/** Widths of the columns of one newspaper column, pt; the last takes what is left. */
const columns = [
  { key: 'time', width: 44 },
  { key: 'hand', width: 29 },
  { key: 'piece', width: 20 },
  { key: 'spot', width: 50 },
  { key: 'figure', width: 40 },
  { key: 'thermometer', width: 34 },
] as const;

export function readingsPages(names: SheetNames, printed: Printed, paper: Paper): ReactElement[] {
  const lines = allLines(names);
  if (lines.length === 0) return [];
  const { width, height: room } = inner(paper);
  const height = room - (belowPage(names) - margin.bottom);
  const columnWidth = (width - gutter) / 2;
  const { cut, row } = laidOut(lines, height - 30, names);
  const pages = Array.from({ length: Math.ceil(cut.length / 2) }, (_, i) => cut.slice(i * 2, i * 2 + 2));
  return pages.map((page, at) =>
    h(
      Page,
      {
        key: `readings-${at}`,
        size: pageSize[paper].name,
        style: { ...style.page, paddingBottom: belowPage(names) },
      },
      pageHead(names, names.say('sheet.every_reading')),
      h(
        View,
        { style: style.body },
        h(Text, { style: { fontSize: 9, height: 24, lineHeight: 1.2 } }, names.say('sheet.readings_note')),
        h(
          View,
          { style: { ...style.row } },
          page.map((column, i) =>
            h(
              View,
              { key: i, style: { width: columnWidth, marginRight: i === 0 ? gutter : 0 } },
              segments(column).map((segment, n) =>
                segmentView(names, segment, { width: columnWidth, rowHeight: row }, n),
              ),
            ),
          ),
        ),
      ),
      pageFoot(names, printed),
      pageNumber(names),
    ),
  );
}

/** The roomiest rows whose last page is at least half a column full; where none are, those that fill it most. */
function laidOut(lines: readonly Line[], height: number, names: SheetNames): { cut: Line[][]; row: number } {
  const all = rowHeights.map((row) => {
    const cut = newspaper(lines, height, row, names);
    const alone = cut.length % 2 === 1 && cut.length > 1;
    const last = (cut.at(-1) ?? []).reduce((sum, line) => sum + sizeOf(line, row), 0);
    return { cut, row, full: alone ? last : height };
  });
  const most = Math.max(...all.map(({ full }) => full));
  return all.find(({ full }) => full > height / 2 || full === most) ?? { cut: [], row: rowHeights[0] };
}

const sizeOf = (line: Line, rowHeight: number): number =>
  line.kind === 'heading' ? headingHeight + rowHeight : rowHeight;

/** Cuts the lines into columns of at most `height`; a heading never stands last, and is said again at the top. */
function newspaper(lines: readonly Line[], height: number, rowHeight: number, names: SheetNames): Line[][] {
  const cut: Line[][] = [];
  let column: Line[] = [];
  let used = 0;
  let heading = '';
  const size = (line: Line): number => sizeOf(line, rowHeight);
  const turn = (): void => {
    cut.push(column);
    column = [];
    used = 0;
  };
  for (const line of lines) {
    if (line.kind === 'heading') heading = line.words;
    const need = line.kind === 'heading' ? size(line) + 2 * rowHeight : size(line);
    if (used + need > height && column.length > 0) {
      turn();
      if (line.kind !== 'heading') {
        const again: Line = { kind: 'heading', words: names.say('sheet.continued', { words: heading }) };
        column.push(again);
        used += size(again);
      }
    }
    column.push(line);
    used += size(line);
  }
  if (column.length > 0) turn();
  return cut;
}

type Segment = { heading: string; lines: Exclude<Line, { kind: 'heading' }>[] };

function segments(column: readonly Line[]): Segment[] {
  const all: Segment[] = [];
  for (const line of column) {
    if (line.kind === 'heading') all.push({ heading: line.words, lines: [] });
    else all.at(-1)?.lines.push(line);
  }
  return all;
}

type Room = { width: number; rowHeight: number };

function segmentView(names: SheetNames, segment: Segment, room: Room, n: number): ReactElement {
  const { width, rowHeight } = room;
  const cellLines = cellLinesOf(rowHeight);
  const height = segment.lines.length * rowHeight;
  const fixed = columns.reduce((sum, column) => sum + column.width, 0);
  const rules = segment.lines.map((_, i) => `M0 ${(i + 1) * rowHeight}H${width}`).join('');
  return h(
    View,
    { key: n },
    h(
      Text,
      { style: { ...style.name, fontSize: 10, height: headingHeight, paddingTop: 4 } },
      short(segment.heading, 52),
    ),
    h(
      View,
      {
        style: {
          ...style.row,
          height: rowHeight,
          fontSize: 9,
          lineHeight: 1, // a text that is higher than its box is not printed at all
          fontWeight: 700,
          borderBottomWidth: 1,
          borderBottomColor: '#000',
        },
      },
      columns.map((column) =>
        h(
          Text,
          {
            key: column.key,
            style: {
              width: column.width,
              ...(column.key === 'figure' ? { textAlign: 'right', paddingRight: 6 } : {}),
            },
          },
          names.say(`sheet.column.${column.key}`),
        ),
      ),
      h(Text, { style: { width: width - fixed } }, names.say('sheet.column.note')),
    ),
    h(
      View,
      { style: { ...style.row, height, position: 'relative' } },
      h(
        Svg,
        { width, height, style: { position: 'absolute', top: 0, left: 0 } },
        h(Path, { d: rules, stroke: hair, strokeWidth: 0.5 }),
      ),
      columns.map((column, i) => columnText(segment, i, { width: column.width, rowHeight }, column.key)),
      columnText(segment, columns.length, { width: width - fixed, rowHeight }, 'note'),
      segment.lines.map((line, i) =>
        line.kind === 'across'
          ? h(
              Text,
              {
                key: `across-${i}`,
                style: { ...cellLines, position: 'absolute', top: i * rowHeight, left: 0, width },
              },
              nowrap(line.words),
            )
          : null,
      ),
    ),
  );
}

const cellLinesOf = (rowHeight: number) => ({ fontSize: 9, lineHeight: rowHeight / 9 });

/** One column of a segment as one text: a line a reading. Only figures beyond the limit are nodes of their own. */
function columnText(segment: Segment, at: number, { width, rowHeight }: Room, key: string): ReactElement {
  const base = {
    ...cellLinesOf(rowHeight),
    width,
    ...(key === 'figure' ? { textAlign: 'right' as const, paddingRight: 6, fontWeight: 700 as const } : {}),
    ...(key === 'time' ? { fontWeight: 700 as const } : {}),
  };
  const words = (line: Segment['lines'][number]): string =>
    line.kind === 'across' ? ' ' : line.cells[at] || ' ';
  const last = segment.lines.length - 1;
  const hasBlack = key === 'figure' && segment.lines.some((line) => line.kind === 'reading' && line.beyond);
  if (!hasBlack) {
    return h(Text, { key, style: base }, segment.lines.map((line) => nowrap(words(line))).join('\n'));
  }
  return h(
    Text,
    { key, style: base },
    segment.lines.map((line, i) => {
      const end = i === last ? '' : '\n';
      return line.kind === 'reading' && line.beyond
        ? h(
            Text,
            { key: i },
            h(Text, { style: { backgroundColor: '#000', color: '#fff' } }, nowrap(` ${words(line)} `)),
            end,
          )
        : `${nowrap(words(line))}${end}`;
    }),
  );
}

const nowrap = (words: string): string => words.replaceAll(' ', '\u00a0').replaceAll('-', '\u2011');

const short = (words: string, most: number): string =>
  words.length <= most ? words : `${words.slice(0, most - 1).trimEnd()}…`;

function allLines(names: SheetNames): Line[] {
  const { day, say } = names;
  const other = (title: string, readings: readonly ReadingDoc[]): Line[] =>
    readings.length === 0
      ? []
      : [{ kind: 'heading', words: title }, ...readings.flatMap((one) => readingLines(names, one))];
  const air = Map.groupBy(day.air, (reading) => reading.equipment);
  return [
    ...day.batches.flatMap((batch) => batchLines(names, batch)),
    ...[...air].flatMap(([equipment, readings]) =>
      other(say('sheet.air_of', { place: names.place(equipment) }), readings),
    ),
    ...other(say('sheet.loose'), day.loose),
  ];
}

/** The readings of a batch under the step in which they were first read, with the gaps of its plan between them. */
function batchLines(names: SheetNames, batch: BatchDoc): Line[] {
  const byId = new Map(batch.readings.map((reading) => [reading.id, reading]));
  const printed = new Set<string>();
  return batch.runs.flatMap((run) => {
    const mine = run.readings.filter((id) => !printed.has(id));
    for (const id of mine) printed.add(id);
    const readings = mine.map((id) => byId.get(id)).filter((reading) => reading !== undefined);
    if (readings.length === 0) return [];
    const heading = `${batch.name}, ${names.say(`common.step.${run.step}`)}, ${names.place(run.equipment)}`;
    return [{ kind: 'heading' as const, words: heading }, ...withGaps(names, run, readings)];
  });
}

/** "nobody looked, 4 h 07 min" stands where the gap was, longer than the house plan allows. */
function withGaps(names: SheetNames, run: RunDoc, readings: readonly ReadingDoc[]): Line[] {
  const most = run.plan_interval_min;
  return readings.flatMap((reading, i) => {
    const before = readings[i - 1];
    const gap = before ? minutesBetween(msOf(before.at), msOf(reading.at)) : 0;
    const lines = readingLines(names, reading);
    if (!before || most === null || gap <= most) return lines;
    return [
      {
        kind: 'across' as const,
        words: names.say('sheet.gap_row', {
          from: names.time(before.at),
          to: names.time(reading.at),
          length: names.length(gap),
        }),
      },
      ...lines,
    ];
  });
}

/** A note that is too long for its column has a row of its own below. */
function readingLines(names: SheetNames, reading: ReadingDoc): Line[] {
  const words = names.readingNote(reading);
  const fits = words.length <= mostNote;
  const line: Line = {
    kind: 'reading',
    beyond: reading.beyond === true,
    suspect: reading.suspect,
    cells: [
      names.time(reading.at),
      names.hand(reading.by),
      reading.piece === null ? '' : String(reading.piece),
      reading.spot === null ? '' : names.say(`sheet.spot.${reading.spot}`),
      figureOf(names, reading),
      shortThermometer(names, reading.thermometer),
      fits ? words : '',
    ],
  };
  return fits ? [line] : [line, { kind: 'across', words: `      ${short(words, 50)}` }];
}

/** The unit stands with a figure that is not in the kitchen's own. */
const figureOf = (names: SheetNames, reading: ReadingDoc): string =>
  reading.unit === names.day.site.unit ? reading.typed : names.figure(reading.typed, reading.unit);

function shortThermometer(names: SheetNames, id: string | null): string {
  const one = names.day.thermometers.find((each) => each.id === id);
  return short(one?.name ?? names.thermometer(id), 9);
}
