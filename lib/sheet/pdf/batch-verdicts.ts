import { Text, View } from '@react-pdf/renderer';
import { createElement as h, type ReactElement } from 'react';
import type { BatchDoc, RunDoc, StageDoc } from '../day-schema.ts';
import type { MarkWord } from '../mark-paths.ts';
import { ranges, type SheetNames } from '../sheet-names.ts';
import { stagesInOrder } from '../stage-order.ts';
import { sectionWords, stageWords, unreadLegend } from '../stage-words.ts';
import { mark } from './mark.ts';
import { style } from './style.ts';

/** Each batch in the order of the night: its steps with every verdict, its section, its figures and its margin. */
export function batchVerdicts(names: SheetNames): ReactElement[] {
  const { day, say } = names;
  const title = h(
    View,
    { key: 'batches' },
    h(Text, { style: style.part }, say('sheet.batches')),
    ...unreadLegend(names).map((line) => h(Text, { key: line, style: style.tool }, line)),
  );
  const [first, ...rest] = day.batches;
  return first
    ? [batchBlock(names, first, title), ...rest.map((batch) => batchBlock(names, batch, null))]
    : [title, h(Text, { key: 'none' }, say('sheet.no_batches'))];
}

function batchBlock(names: SheetNames, batch: BatchDoc, title: ReactElement | null): ReactElement {
  const { say } = names;
  const runs = batch.runs.map((run, at) => runBlock(names, run, at));
  const head = h(
    View,
    { style: title === null ? style.ruledAbove : { paddingTop: 3 } },
    h(
      Text,
      { style: style.under },
      `${batch.name}, ${names.food(batch)}`,
      h(
        Text,
        { style: style.besideName },
        `   ${say(`common.food_class.${batch.food?.class ?? 'unknown'}`)}, ${batch.pieces === null ? say('sheet.not_counted') : say('common.pieces', { count: batch.pieces })}`,
      ),
    ),
    ...[
      made(names, batch),
      batch.note === null || batch.note === '' ? null : say('sheet.quoted', { words: batch.note }),
      endsWords(names, batch),
    ]
      .filter((line) => line !== null && line !== '')
      .map((line, at) => h(Text, { key: at }, line)),
  );
  return h(View, { key: batch.id }, h(View, { wrap: false }, title, head, runs[0] ?? null), runs.slice(1));
}

function made(names: SheetNames, batch: BatchDoc): string | null {
  if (batch.source.length === 0) return null;
  const from = batch.source.map((one) =>
    [
      one.name ?? one.words ?? names.say('common.not_known'),
      one.pieces === null ? null : names.pieces(one.pieces),
    ]
      .filter((part) => part !== null)
      .join(', '),
  );
  return names.say('sheet.made_from', { how: names.say(`sheet.made.${batch.made}`), from: from.join('; ') });
}

/** Pieces that ended at one moment for one reason are told together. */
function endsWords(names: SheetNames, batch: BatchDoc): string {
  const together = Map.groupBy(batch.ends, (one) => [one.at, one.reason, one.amount ?? ''].join('|'));
  return [...together.values()]
    .flatMap((ends) => {
      const [one] = ends;
      if (!one) return [];
      const numbers = ends.map((end) => end.piece).filter((piece) => piece !== null);
      return names.say(one.amount === null || one.amount === '' ? 'sheet.gone' : 'sheet.gone_amount', {
        piece:
          numbers.length === 0
            ? names.say('sheet.whole_batch')
            : names.say('sheet.pieces', { count: numbers.length, numbers: ranges(numbers) }),
        time: names.time(one.at),
        reason: names.say(`sheet.gone_reason.${one.reason}`),
        amount: one.amount ?? '',
      });
    })
    .join(' ');
}

function runBlock(names: SheetNames, run: RunDoc, at: number): ReactElement {
  const { say } = names;
  const stages = stagesInOrder(run);
  const places = run.places.map((place) => names.place(place.equipment)).join(' › ');
  return h(
    View,
    { key: run.id, wrap: false, style: { paddingLeft: 10, marginTop: at === 0 ? 2 : 4 } },
    h(
      Text,
      null,
      h(Text, { style: style.strong }, `${say(`common.step.${run.step}`)}, ${places}`),
      `   ${names.pieces(run.pieces)}   ${run.end ? say('sheet.from_to', { from: names.time(run.start), to: names.time(run.end) }) : say('sheet.from_on', { from: names.time(run.start) })}`,
    ),
    run.not_judged === null ? null : h(Text, null, say(`sheet.not_judged.${run.not_judged}`)),
    ...stages.map(([name, stage]) => stageRow(names, name, stage)),
  );
}

/** Besley stands lower in its line than the words beside it, pt at 9. */
const raise = -3;

function stageRow(names: SheetNames, name: string, stage: StageDoc): ReactElement {
  const { say } = names;
  return h(
    View,
    {
      key: name,
      style: {
        ...style.row,
        ...style.ruled,
        paddingVertical: 0.4,
        fontSize: 9,
        lineHeight: 1.2,
        alignItems: 'flex-start',
      },
    },
    h(
      View,
      {
        style: {
          ...style.row,
          width: names.language === 'es' ? 104 : 90,
          alignItems: 'center',
          marginTop: raise,
        },
      },
      mark(stage.verdict as MarkWord, 18),
      h(Text, { style: { ...style.name, fontSize: 9 } }, say(`parts.mark.${stage.verdict}`)),
    ),
    h(Text, { style: { width: 72 } }, say(`sheet.stage.${name}`)),
    h(Text, { style: { ...style.cited, width: 74 } }, sectionWords(names, name, stage)),
    h(Text, { style: { flex: 1 } }, stageWords(names, name, stage)),
  );
}
