import { Text, View } from '@react-pdf/renderer';
import { createElement as h, type ReactElement } from 'react';
import type { ThermometerDoc } from '../day-schema.ts';
import { exceptionWords } from '../exception-words.ts';
import { exceptionsOf } from '../exceptions.ts';
import type { SheetNames } from '../sheet-names.ts';
import { style } from './style.ts';
import { type Cell, table } from './table.ts';

/** Thermometers, rounds, notes, late entries, corrections, handovers and hands: what stands behind the batches. */
export const dayTables = (names: SheetNames): ReactElement[] =>
  [
    doneInFull(names),
    thermometers(names),
    rounds(names),
    notes(names),
    handovers(names),
    late(names),
    amendments(names),
    odd(names),
    hands(names),
  ].filter((part) => part !== null);

function doneInFull(names: SheetNames): ReactElement | null {
  const rows = exceptionsOf(names.day)
    .map((one) => ({ tag: one.tag, words: exceptionWords(names, one) }))
    .filter(({ words }) => words.done.length > 0)
    .map(({ tag, words }): Cell[] => [String(tag), words.head, words.done.join('\n')]);
  if (rows.length === 0) return null;
  return table(
    'done',
    names.say('sheet.deviations_full'),
    [
      { head: names.say('sheet.column.tag'), width: 24, strong: true },
      { head: names.say('sheet.column.about'), width: 130 },
      { head: names.say('sheet.column.words') },
    ],
    rows,
  );
}

type Check = NonNullable<ThermometerDoc['check_before']>;

function thermometers(names: SheetNames): ReactElement | null {
  const { day, say } = names;
  if (day.thermometers.length === 0) return null;
  const checkWords = (check: Check): string =>
    say('sheet.check_row', {
      at: names.moment(check.at),
      bath: say(`sheet.bath.${check.bath}`),
      figure: names.figure(check.typed, check.unit),
      expected: names.figure(check.expected, check.unit),
      verdict: say(`parts.mark.${check.verdict}`),
      hand: names.hand(check.by),
    });
  const rows = day.thermometers.map((one): Cell[] => [
    names.thermometer(one.id),
    one.check_before ? checkWords(one.check_before) : say('sheet.check_none'),
    one.checks.length === 0 ? say('sheet.check_none') : one.checks.map(checkWords).join('\n'),
    one.check_after ? checkWords(one.check_after) : say('sheet.check_none_yet'),
    say('sheet.thermometer_readings', { count: one.readings, suspect: one.suspect.length }),
  ]);
  return table(
    'thermometers',
    say('sheet.thermometers'),
    [
      { head: say('sheet.column.thermometer_long'), width: 72, strong: true },
      { head: say('sheet.column.check_before') },
      { head: say('sheet.column.checks') },
      { head: say('sheet.column.check_after') },
      { head: say('sheet.column.readings'), width: 54 },
    ],
    rows,
  );
}

function rounds(names: SheetNames): ReactElement | null {
  const { day, say } = names;
  if (day.rounds.length === 0) return null;
  return table(
    'rounds',
    say('sheet.rounds'),
    [
      { head: say('sheet.column.planned'), width: 60, strong: true },
      { head: say('sheet.column.walked'), width: 110 },
      { head: say('sheet.column.hand'), width: 40 },
      { head: say('sheet.column.words') },
    ],
    day.rounds.map((round) => [
      round.planned_at ? names.time(round.planned_at) : say('sheet.unplanned'),
      round.status === 'missed'
        ? say('sheet.round_missed')
        : say('sheet.from_to', {
            from: names.time(round.at),
            to: round.ended_at ? names.time(round.ended_at) : say('sheet.goes_on'),
          }),
      names.hand(round.by),
      [
        round.status === 'missed' ? say('sheet.told_at', { time: names.time(round.entered_at) }) : null,
        round.reason,
        round.note,
      ]
        .filter((words) => words !== null && words !== '')
        .join(' '),
    ]),
  );
}

function notes(names: SheetNames): ReactElement | null {
  const { day, say } = names;
  if (day.notes.length === 0) return null;
  return table(
    'notes',
    say('sheet.notes'),
    [
      { head: say('sheet.column.time'), width: 46, strong: true },
      { head: say('sheet.column.hand'), width: 36 },
      { head: say('sheet.column.about'), width: 104 },
      { head: say('sheet.column.as_written') },
    ],
    day.notes.map((note) => [
      names.time(note.at),
      names.hand(note.by),
      [
        note.batch === null ? null : names.batch(note.batch),
        note.piece === null ? null : names.say('common.piece', { number: note.piece }),
        note.equipment === null ? null : names.place(note.equipment),
        note.thermometer === null ? null : names.thermometer(note.thermometer),
      ]
        .filter((words) => words !== null)
        .join(', '),
      [
        note.could_not === null
          ? null
          : say('sheet.could_not', { why: say(`sheet.could_not_why.${note.could_not}`) }),
        note.text,
      ]
        .filter((words) => words !== null && words !== '')
        .join(' '),
    ]),
  );
}

function handovers(names: SheetNames): ReactElement | null {
  const { day, say } = names;
  if (day.handovers.length === 0) return null;
  return table(
    'handovers',
    say('sheet.handovers'),
    [
      { head: say('sheet.column.time'), width: 46, strong: true },
      { head: say('sheet.column.hands'), width: 60 },
      { head: say('sheet.column.as_written') },
    ],
    day.handovers.map((one) => [
      names.time(one.at),
      `${names.hand(one.from)} › ${names.hand(one.to)}`,
      [...one.open_items, one.text ?? ''].filter((words) => words !== '').join('. '),
    ]),
  );
}

function late(names: SheetNames): ReactElement | null {
  const { day, say } = names;
  if (day.late.length === 0) return null;
  return table(
    'late',
    say('sheet.late_title', { minutes: day.site.late_after_min }),
    [
      { head: say('sheet.column.entry'), width: 46, align: 'right' },
      { head: say('sheet.column.kind'), width: 110 },
      { head: say('sheet.column.happened'), width: 66, strong: true },
      { head: say('sheet.column.typed_at'), width: 66, strong: true },
      { head: say('sheet.column.hand'), width: 40 },
      { head: say('sheet.column.reason') },
    ],
    day.late.map((one) => [
      String(one.seq),
      say(`sheet.kind.${one.kind}`),
      names.time(one.at),
      names.time(one.entered_at),
      names.hand(one.by),
      one.reason ?? '',
    ]),
  );
}

function amendments(names: SheetNames): ReactElement | null {
  const { day, say } = names;
  if (day.amendments.length === 0) return null;
  return table(
    'amendments',
    say('sheet.amendments'),
    [
      { head: say('sheet.column.time'), width: 62, strong: true },
      { head: say('sheet.column.hand'), width: 36 },
      { head: say('sheet.column.of'), width: 120 },
      { head: say('sheet.column.written'), width: 70 },
      { head: say('sheet.column.meant'), width: 70 },
      { head: say('sheet.column.reason') },
    ],
    day.amendments.map((one) => [
      names.time(one.at),
      names.hand(one.by),
      `${say(`sheet.kind.${one.target_kind ?? 'unknown'}`)} ${names.time(one.target_at)}, ${say(`sheet.field.${one.field}`)}`,
      one.from,
      one.field === 'struck' ? say('sheet.taken_back') : one.to,
      one.reason,
    ]),
  );
}

function odd(names: SheetNames): ReactElement | null {
  const { day, say } = names;
  if (day.odd.length === 0) return null;
  return table(
    'odd',
    say('sheet.odd'),
    [{ head: say('sheet.column.time'), width: 62, strong: true }, { head: say('sheet.column.words') }],
    day.odd.map((one) => [names.time(one.at), say(`odd.${one.key}`, one.values)]),
  );
}

const hands = ({ day, say }: SheetNames): ReactElement =>
  h(
    View,
    { key: 'hands', wrap: false },
    h(Text, { style: style.section }, say('sheet.hands')),
    h(
      Text,
      null,
      day.people
        .map((one) => `${one.initials} ${one.name}, ${one.title ?? say(`common.role.${one.role}`)}`)
        .join('.  '),
    ),
    h(Text, { style: { marginTop: 4, fontSize: 9 } }, say('sheet.small_print')),
  );
