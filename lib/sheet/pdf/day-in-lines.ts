import { Path, Svg, Text, View } from '@react-pdf/renderer';
import { createElement as h, type ReactElement } from 'react';
import { msOf } from '#shared/time.ts';
import { drawnLine, type LineRow, linesOf, tagsOn } from '../day-lines.ts';
import type { LineDoc } from '../day-schema.ts';
import type { Exception } from '../exceptions.ts';
import { lineGeometry, xOf } from '../line-geometry.ts';
import type { SheetNames } from '../sheet-names.ts';
import { tagBox } from './mark.ts';
import { style } from './style.ts';

const labels = 124; // pt, left of the margin line
const sums = 104; // pt, right of the lines
const bar = 5.5;
const barTop = 7; // the ticks of looks stand above it
const rowHeight = barTop + 2 * bar + 4; // a fallen bar and its cut end here

const hour = 3_600_000;

type Axis = { from: number; to: number; width: number };

/** Every step that was looked at, one proof line each on the axis of the day, tied to the exceptions by their tags. */
export function dayInLines(names: SheetNames, exceptions: readonly Exception[], width: number): ReactElement {
  const { day, say } = names;
  const axis = { from: msOf(day.from), to: msOf(day.to), width: width - labels - sums - 10 };
  const rows = linesOf(day);
  const drawn = rows.map(({ batch, run, line }) =>
    lineRow(names, axis, { batch, run, line, placed: tagsOn(exceptions, run) }),
  );
  const title = h(
    View,
    { minPresenceAhead: 4 * rowHeight, style: { ...style.row, alignItems: 'flex-end' } },
    h(Text, { style: style.section }, say('sheet.lines')),
    h(Text, { style: { flex: 1, marginLeft: 8, marginBottom: 4, fontSize: 9 } }, say('sheet.lines_note')),
  );
  return h(
    View,
    { key: 'lines' },
    title,
    drawn.length > 0 ? [hours(names, axis), ...drawn] : h(Text, null, say('sheet.no_lines')),
  );
}

/** The hours stand again above the lines that go on on the next page. */
function hours(names: SheetNames, axis: Axis): ReactElement {
  const every = 2 * hour;
  const count = Math.floor((axis.to - axis.from) / every);
  const at = Array.from({ length: count + 1 }, (_, i) => axis.from + i * every);
  return h(
    View,
    { key: 'hours', fixed: true, style: { ...style.row, height: 15 } },
    h(View, { style: { width: labels + 6, borderRightWidth: 0 } }),
    h(
      View,
      { style: { width: axis.width, height: 15, position: 'relative' } },
      at.map((t) =>
        h(
          Text,
          {
            key: t,
            style: {
              position: 'absolute',
              top: 0,
              left: xOf(axis, axis.width, t) - 20,
              width: 40,
              textAlign: 'center',
              fontSize: 9,
            },
          },
          names.time(new Date(t).toISOString()).replace(':00', ''),
        ),
      ),
      h(
        Svg,
        { width: axis.width, height: 4, style: { position: 'absolute', top: 11, left: 0 } },
        h(Path, {
          d: at.map((t) => `M${xOf(axis, axis.width, t)} 0V4`).join(''),
          stroke: '#000',
          strokeWidth: 0.5,
        }),
      ),
    ),
  );
}

type Row = LineRow & { placed: { tag: number; at: number }[] };

function lineRow(names: SheetNames, axis: Axis, { batch, run, line, placed }: Row): ReactElement {
  const geometry = lineGeometry(drawnLine(line, axis), { width: axis.width, h: bar, y: barTop });
  return h(
    View,
    { key: run.id, wrap: false, style: { ...style.row, height: rowHeight } },
    h(
      View,
      {
        style: {
          width: labels,
          borderRightWidth: 2,
          borderRightColor: '#000',
          paddingRight: 4,
          height: rowHeight,
          justifyContent: 'center',
        },
      },
      h(
        Text,
        { style: { ...style.name, fontSize: 10, paddingBottom: 0, marginTop: -3 } },
        batch.name,
        h(Text, { style: { ...style.besideName, fontSize: 9 } }, `  ${names.say(`common.step.${run.step}`)}`),
      ),
      h(
        Text,
        { style: { fontSize: 9, lineHeight: 1.1 } },
        short(
          [run.pieces ? names.pieces(run.pieces) : '', names.place(run.equipment)]
            .filter((part) => part !== '')
            .join(', '),
          29,
        ),
      ),
    ),
    h(
      View,
      { style: { width: axis.width, marginLeft: 6, position: 'relative' } },
      h(
        Svg,
        { width: axis.width, height: rowHeight, viewBox: `0 0 ${axis.width} ${rowHeight}` },
        geometry.paths.map((path, at) =>
          h(Path, {
            key: at,
            d: path.d,
            fill: path.stroke === null ? (path.ink === 'paper' ? '#fff' : '#000') : 'none',
            ...(path.stroke === null ? {} : { stroke: '#000', strokeWidth: path.stroke * 0.75 }),
            ...(path.dash === null ? {} : { strokeDasharray: path.dash }),
          }),
        ),
      ),
      ...placed.map((one, i) =>
        h(
          View,
          { key: one.tag, style: { position: 'absolute', top: -5, left: tagLeft(placed, i, axis) } },
          tagBox(one.tag, 12),
        ),
      ),
    ),
    h(
      View,
      { style: { width: sums, marginLeft: 4, justifyContent: 'center' } },
      h(Text, { style: { fontSize: 9, lineHeight: 1.05 } }, sumsWords(names, line)),
    ),
  );
}

/** Tags that would lie over one another stand side by side. */
function tagLeft(placed: readonly { at: number }[], i: number, axis: Axis): number {
  let last = Number.NEGATIVE_INFINITY;
  for (let n = 0; n <= i; n += 1) {
    const x = Math.max(0, xOf(axis, axis.width, placed[n]?.at ?? axis.from) - 6.5);
    last = Math.max(x, last + 14);
  }
  return Math.min(last, axis.width - 13);
}

const short = (words: string, most: number): string =>
  words.length <= most ? words : `${words.slice(0, most - 1).trimEnd()}…`;

/** Lengths per line: looked in time, nobody looked. Never added up over the day. */
const sumsWords = (names: SheetNames, line: LineDoc): string =>
  names.say('sheet.sums', {
    seen: names.length(line.seen_min, 'down'),
    nobody: names.length(line.nobody_looked_min),
  });
