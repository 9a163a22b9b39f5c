import { createTranslator } from 'use-intl/core';
import type { Stage, StageName } from '#lib/judge/answer.ts';
import { figuresOf } from '#lib/judge/explain-figures.ts';
import { figureMark, markLegend, type ProofVoice } from '#lib/judge/explain-words.ts';
import type { LogAnswer, LogBatch, LogStepAnswer } from '#lib/judge/log.ts';
import type { LogRow } from '#lib/judge/log-rows.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { degrees } from '#shared/units.ts';
import { type Language, messages } from '#shared/words/messages.ts';

/** The wall clock of an instant by the offset with which a row of the log was written: "2026-05-08 22:00". */
export function wallTime(at: number, like: LogRow): string {
  const offset = /([+-])(\d\d):?(\d\d)$/.exec(like.time);
  const minutes = offset === null ? 0 : Number(offset[2]) * 60 + Number(offset[3]);
  const shifted = at + (offset?.[1] === '-' ? -minutes : minutes) * 60_000;
  const text = new Date(shifted).toISOString();
  return `${text.slice(0, 10)} ${text.slice(11, text.slice(17, 19) === '00' ? 16 : 19)}`;
}

const wordsOf = (locale: Language, limits: Profile | null) => {
  const whole = createTranslator({ locale, messages: messages[locale] }) as unknown as ProofVoice['say'];
  const from = messages[locale];
  return {
    cli: createTranslator({ locale, messages: from, namespace: 'cli.check' }),
    judge: createTranslator({ locale, messages: from, namespace: 'judge' }),
    common: createTranslator({ locale, messages: from, namespace: 'common' }),
    say: ((key, values) => whole(key, values)) as ProofVoice['say'],
    limits,
  };
};
type Words = ReturnType<typeof wordsOf>;

/** A length in hours and minutes, with seconds where there are any, never rounded to a limit: "1 h 59 min 59 s". */
function length(minutes: number, { common }: Words): string {
  const whole = Math.floor(minutes);
  const seconds = Math.round((minutes - whole) * 60);
  const [h, m] = [Math.floor(whole / 60), whole % 60];
  const parts = [
    h > 0 ? common('hours', { h }) : '',
    m > 0 || (h === 0 && seconds === 0) ? common('minutes', { m }) : '',
  ];
  return [...parts, seconds > 0 ? `${seconds} s` : ''].filter((part) => part !== '').join(' ');
}

function limitOf({ limit }: Stage, { judge }: Words): string | null {
  if (limit === null) return null;
  return judge(`limit.${limit.comparison}`, { figure: `${limit.value} ${degrees(limit.unit)}` });
}

/** What the rule asks: figure and time. */
function demand(stage: Stage, words: Words): string {
  const time =
    stage.limit_min === null ? null : words.judge('within', { time: length(stage.limit_min, words) });
  return [limitOf(stage, words), time].filter((part) => part !== null).join(', ');
}

/** What was found: the lengths that the readings leave, where the stage has any. */
function found(stage: Stage, words: Words): string[] {
  const { judge } = words;
  const told: string[] = [];
  if (stage.limit_min !== null && stage.longest_min !== null)
    told.push(judge('at_most_seen', { time: length(stage.longest_min, words) }));
  if (stage.limit_min !== null && stage.shortest_min !== null && stage.shortest_min > 0)
    told.push(judge('at_least_seen', { time: length(stage.shortest_min, words) }));
  if (typeof stage.below_longest_min === 'number')
    told.push(
      judge('below_lengths', {
        shortest: length(stage.below_shortest_min ?? 0, words),
        longest: length(stage.below_longest_min, words),
      }),
    );
  if (typeof stage.above_longest_min === 'number')
    told.push(
      judge('above_lengths', {
        shortest: length(stage.above_shortest_min ?? 0, words),
        longest: length(stage.above_longest_min, words),
      }),
    );
  if (typeof stage.longest_gap_min === 'number')
    told.push(judge('gap', { time: length(stage.longest_gap_min, words) }));
  if (stage.last_day) told.push(judge('last_day', { day: stage.last_day }));
  return told;
}

function nextOf(stage: Stage, step: LogStepAnswer, words: Words): string[] {
  if (stage.next === null) return [];
  const by = stage.next.by === null ? 'none' : wallTime(stage.next.by, step.last);
  const figure = stage.limit === null ? '' : `${stage.limit.value} ${degrees(stage.limit.unit)}`;
  const what = words.judge(`next.${stage.next.action}`, { by, limit: figure });
  return [words.cli('next', { what })];
}

type Line = { name: string; verdict: string; demand: string; section: string; under: string[] };

/** The figures of one stage, for the marks that say how they were checked and bind. */
const figuresFor = ({ asked }: LogStepAnswer, name: StageName, stage: Stage, limits: Profile | null) =>
  asked === null || limits === null ? [] : figuresOf(asked.kind, name, asked.record, limits, stage);

function lineOf(name: StageName, stage: Stage, step: LogStepAnswer, words: Words): Line {
  const { judge, cli } = words;
  const verdict = judge(`verdict.${stage.verdict}`);
  const open = judge(stage.verdict === 'kept' ? 'so_far' : 'open');
  const reasons = stage.reasons.map((reason) => judge(`reason.${reason}`)).join('; ');
  const isPlan = name === 'house_plan_interval';
  return {
    name: judge(`stage.${name}`),
    verdict: stage.open ? `${verdict}, ${open}` : verdict,
    demand: demand(stage, words),
    section: isPlan ? judge('house_plan') : `${stage.section}${marksOf(name, stage, step, words)}`,
    under: [
      ...found(stage, words),
      ...(reasons === '' ? [] : [cli('why', { reasons })]),
      ...nextOf(stage, step, words),
    ],
  };
}

function marksOf(name: StageName, stage: Stage, step: LogStepAnswer, words: Words): string {
  const marks = figuresFor(step, name, stage, words.limits).map((figure) => figureMark(figure, words));
  return [...new Set(marks)].map((mark) => (mark === '' ? '' : ` [${mark}]`)).join('');
}

/** Lines with their columns under each other; what belongs to a line stands indented below it. */
function aligned(lines: readonly Line[]): string[] {
  const width = (of: (line: Line) => string): number => Math.max(0, ...lines.map((line) => of(line).length));
  const [name, verdict, asks] = [width((l) => l.name), width((l) => l.verdict), width((l) => l.demand)];
  return lines.flatMap((line) => [
    `    ${line.name.padEnd(name)}  ${line.verdict.padEnd(verdict)}  ${line.demand.padEnd(asks)}  ${line.section}`.trimEnd(),
    ...line.under.map((text) => `        ${text}`),
  ]);
}

function stepLines(step: LogStepAnswer, words: Words): string[] {
  const { cli, judge, common } = words;
  const until = step.end === null ? 'open' : wallTime(step.end, step.last);
  const from = wallTime(step.start.at, step.start);
  const head = `  ${cli('step', { step: common(`step.${step.step}`), from, until })}`;
  if (step.reason !== null)
    return [head, `    ${cli('no_stages', { reason: judge(`reason.${step.reason}`) })}`];
  return [
    head,
    ...aligned(stageEntries(step.stages).map(([name, stage]) => lineOf(name, stage, step, words))),
  ];
}

const batchLines = ({ batch, food, classed, steps }: LogBatch, words: Words): string[] => [
  words.cli(classed ? 'batch' : 'batch_unclassed', { batch, food }),
  ...steps.flatMap((step) => stepLines(step, words)),
  '',
];

/** A judged log as a table that a cook can read. */
export function checkTable({ batches, asOf }: LogAnswer, limits: Profile | null, locale: Language): string {
  const words = wordsOf(locale, limits);
  const figures = batches.flatMap(({ steps }) =>
    steps.flatMap((step) =>
      stageEntries(step.stages).flatMap(([name, stage]) => figuresFor(step, name, stage, limits)),
    ),
  );
  const last = batches.at(-1)?.steps.at(-1)?.last;
  const moment = asOf === null || last === undefined ? '' : wallTime(asOf, last);
  return [
    words.cli('heading', { limits: limits?.name ?? '', asOf: moment }),
    '',
    ...batches.flatMap((batch) => batchLines(batch, words)),
    ...markLegend(figures, words),
    words.cli('closing'),
  ].join('\n');
}
