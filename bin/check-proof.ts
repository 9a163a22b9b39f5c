import { createTranslator } from 'use-intl/core';
import { explainStep } from '#lib/judge/explain.ts';
import { markLegend, type ProofVoice, proofSteps } from '#lib/judge/explain-words.ts';
import type { LogAnswer, LogStepAnswer } from '#lib/judge/log.ts';
import { stageJson } from '#lib/judge/stage.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { isoOf } from '#shared/time.ts';
import { type Language, messages } from '#shared/words/messages.ts';
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

function stepProof(step: LogStepAnswer, profile: Profile, say: ProofVoice['say'], all: boolean): string[] {
  const { asked, reason } = step;
  if (asked === null || Object.keys(step.stages).length === 0)
    return wrapped(say('cli.check.no_stages', { reason: say(`judge.reason.${reason ?? 'no_figure'}`) }), 4);
  const voice: ProofVoice = { say, time: (ms) => wallTime(ms, step.last) };
  const proof = explainStep(asked.kind, asked.record, profile);
  return proof.stages.flatMap((stage) => {
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
}

/** A judged log as numbered proofs in plain text, 80 columns wide; the same log gives the same text. */
export function checkProof(
  { batches, asOf }: LogAnswer,
  profile: Profile,
  locale: Language,
  all: boolean,
): string {
  const say = sayIn(locale);
  const last = batches.at(-1)?.steps.at(-1)?.last;
  const moment = asOf === null || last === undefined ? '' : wallTime(asOf, last);
  const figures = batches.flatMap(({ steps }) =>
    steps.flatMap(({ asked }) =>
      asked === null
        ? []
        : explainStep(asked.kind, asked.record, profile).stages.flatMap((stage) => stage.figures),
    ),
  );
  const legend = markLegend(figures, { say });
  return [
    ...wrapped(say('cli.check.heading', { limits: profile.name, asOf: moment }), 0),
    ...batches.flatMap(({ batch, food, classed, steps }) => [
      '',
      ...wrapped(say(classed ? 'cli.check.batch' : 'cli.check.batch_unclassed', { batch, food }), 0),
      ...steps.flatMap((step) => stepProof(step, profile, say, all)),
    ]),
    '',
    ...legend.flatMap((line) => wrapped(line, 0)),
    ...wrapped(say('cli.check.closing'), 0),
  ].join('\n');
}

/** The proof of a log's step as data: instants as text, readings by the log's lines. */
export function proofJson({ asked }: LogStepAnswer, profile: Profile): unknown {
  if (asked === null) return null;
  const { lines } = asked;
  const lineOf = (index: number): number => lines[index] ?? 0;
  const { kind, stages, ...rest } = explainStep(asked.kind, asked.record, profile);
  return {
    kind,
    ...rest,
    stages: stages.map((stage) => ({
      ...stage,
      stage: { ...stageJson(stage.stage), rests_on: stage.stage.rests_on.map(lineOf) },
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
