import { createTranslator } from 'use-intl/core';
import { explainStep, type StageProof } from '#lib/judge/explain.ts';
import { dateProof } from '#lib/judge/explain-days.ts';
import { markLegend, type ProofVoice, proofSteps } from '#lib/judge/explain-words.ts';
import type { LogAnswer, LogStepAnswer } from '#lib/judge/log.ts';
import { stageJson } from '#lib/judge/stage.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { isoOf } from '#shared/time.ts';
import { type Language, messages } from '#shared/words/messages.ts';
import { noteIn } from '#shared/words/note-in.ts';
import { wallTime } from './check-table.ts';

const width = 80;

/** Words in lines of at most 80 columns; what goes on stands two further in than the line began. A long word stays whole. */
export function wrapped(text: string, indent: number): string[] {
  const lines: string[] = [];
  let line = ' '.repeat(indent);
  let isFresh = true;
  for (const word of text.split(' ')) {
    if (!isFresh && line.length + 1 + word.length > width) {
      lines.push(line.trimEnd());
      line = ' '.repeat(indent + 2) + word;
    } else line += isFresh ? word : ` ${word}`;
    isFresh = false;
  }
  return [...lines, line.trimEnd()];
}

const sayIn = (locale: Language): ProofVoice['say'] => {
  const translator = createTranslator({ locale, messages: messages[locale] }) as unknown as ProofVoice['say'];
  return (key, values) => translator(key, values);
};

/** The proofs of a log's step, that of its date mark among them. */
function provenStages({ asked, days, stages }: LogStepAnswer, profile: Profile): StageProof[] {
  if (asked === null) return [];
  const { stages: proven } = explainStep(asked.kind, asked.record, profile);
  return days === null || stages.date_mark === undefined
    ? proven
    : [...proven, dateProof(stages.date_mark, [days], profile)];
}

function stepProof(
  step: LogStepAnswer,
  profile: Profile,
  words: Pick<ProofVoice, 'say' | 'note'>,
  all: boolean,
): string[] {
  const { say } = words;
  const { asked, reason } = step;
  if (asked === null || Object.keys(step.stages).length === 0)
    return wrapped(say('cli.check.no_stages', { reason: say(`judge.reason.${reason ?? 'no_figure'}`) }), 4);
  const voice: ProofVoice = { ...words, time: (ms) => wallTime(ms, step.last) };
  const silent = asked.kind === 'cold_hold' && step.days === null && profile.figures.date_mark !== null;
  const proofs = provenStages(step, profile).flatMap((stage) => {
    const head = say('explain.stage', {
      step: say(`common.step.${step.step}`),
      stage: say(`judge.stage.${stage.name}`),
      verdict: say(`judge.verdict.${stage.stage.verdict}`),
    });
    const steps = proofSteps(stage, asked.kind, voice, all).flatMap(({ text, under }, place) => [
      ...wrapped(`${place + 1}. ${text}`, 4),
      ...under.flatMap((line) => wrapped(line, 7)),
    ]);
    return ['', ...wrapped(head, 2), ...steps];
  });
  return silent ? [...proofs, '', ...wrapped(say('explain.mark_day.log_silent'), 2)] : proofs;
}

/** A judged log as numbered proofs in plain text, 80 columns wide; the same log gives the same text. */
export function checkProof(
  { batches, asOf }: LogAnswer,
  profile: Profile,
  locale: Language,
  all: boolean,
): string {
  const say = sayIn(locale);
  const words = { say, note: (text: string) => noteIn(locale, text).words };
  const last = batches.at(-1)?.steps.at(-1)?.last;
  const moment = asOf === null || last === undefined ? '' : wallTime(asOf, last);
  const figures = batches.flatMap(({ steps }) =>
    steps.flatMap((step) => provenStages(step, profile).flatMap((stage) => stage.figures)),
  );
  const legend = markLegend(figures, { say });
  return [
    ...wrapped(say('cli.check.heading', { limits: profile.name, asOf: moment }), 0),
    ...batches.flatMap(({ batch, food, classed, steps }) => [
      '',
      ...wrapped(say(classed ? 'cli.check.batch' : 'cli.check.batch_unclassed', { batch, food }), 0),
      ...steps.flatMap((step) => stepProof(step, profile, words, all)),
    ]),
    '',
    ...legend.flatMap((line) => wrapped(line, 0)),
    ...wrapped(say('cli.check.closing'), 0),
  ].join('\n');
}

/** The proof of a log's step as data: instants as text, readings by the log's lines. */
export function proofJson(step: LogStepAnswer, profile: Profile): unknown {
  const { asked } = step;
  if (asked === null) return null;
  const { lines } = asked;
  const lineOf = (index: number): number => lines[index] ?? 0;
  const { kind, profile: limits } = explainStep(asked.kind, asked.record, profile);
  return {
    kind,
    profile: limits,
    stages: provenStages(step, profile).map((stage) => ({
      ...stage,
      stage: {
        ...stageJson(stage.stage),
        // A date mark is judged over the whole batch: its readings are known by their lines already.
        rests_on: stage.days === undefined ? stage.stage.rests_on.map(lineOf) : stage.stage.rests_on,
      },
      pieces: stage.pieces.map((piece) => ({
        ...piece,
        brackets:
          piece.brackets === null
            ? null
            : Object.fromEntries(
                Object.entries(piece.brackets).map(([name, end]) => [
                  name,
                  end === null ? null : { at: isoOf(end.at), lines: end.readings.map(lineOf) },
                ]),
              ),
        readings: piece.readings.map(({ index, at, ...reading }) => ({
          line: lineOf(index),
          at: isoOf(at),
          ...reading,
        })),
      })),
    })),
  };
}
