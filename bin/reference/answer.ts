import { dateMark } from '#lib/judge/date-mark.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import { probeCheck, suspectAfter } from '#lib/judge/probe-check.ts';
import type { JudgedReading, RuleKind } from '#lib/judge/record.ts';
import { roastCook } from '#lib/judge/roast.ts';
import { stagesJson } from '#lib/judge/stage.ts';
import { type StandingEvent, standing } from '#lib/judge/standing.ts';
import { msOf } from '#shared/time.ts';
import {
  type AnyCase,
  type CaseReading,
  dateMarkInputs,
  probeCheckInputs,
  standingInputs,
  stepInputs,
} from './case.ts';
import { profileOf } from './profile.ts';

export type Answer = Record<string, unknown>;

const toReading = ({ t, ...reading }: CaseReading): JudgedReading => ({ ...reading, at: msOf(t) });

function answerStep(kind: RuleKind, inputs: AnyCase['inputs']): Answer {
  const step = stepInputs.parse(inputs);
  const limits = profileOf(step.profile, step.profile_figures);
  if (limits === null)
    throw new Error(`no profile ${step.profile} is built, and the case carries no figures`);
  const stages = judgeStep(
    kind,
    {
      food: step.food,
      facts: step.facts,
      planIntervalMin: step.plan_interval_min,
      start: step.start === null ? null : msOf(step.start),
      end: step.end === null ? null : msOf(step.end),
      asOf: msOf(step.as_of),
      readings: step.readings.map(toReading),
    },
    limits,
  );
  const roast = kind === 'cook' ? roastCook(stages) : null;
  return { stages: stagesJson(stages), ...(roast === null ? {} : { roast_cook: roast }) };
}

function answerDateMark(inputs: AnyCase['inputs']): Answer {
  const { profile, facts } = dateMarkInputs.parse(inputs);
  const limits = profileOf(profile, undefined);
  if (limits === null) throw new Error(`no profile ${profile} is built`);
  return dateMark(facts, limits);
}

function answerProbeCheck(inputs: AnyCase['inputs']): Answer {
  const { profile, facts, readings } = probeCheckInputs.parse(inputs);
  const limits = profileOf(profile, undefined);
  const checked = limits === null ? null : probeCheck(facts, limits);
  if (checked === null) throw new Error(`no accuracy is built for profile ${profile}`);
  const lastGoodAt = facts.last_good_at === null ? null : msOf(facts.last_good_at);
  const suspect =
    checked.verdict === 'kept' ? [] : suspectAfter(readings.map(toReading), facts.probe, lastGoodAt);
  return { ...checked, suspect };
}

function answerStanding(inputs: AnyCase['inputs']): Answer {
  const { events, as_of: asOf } = standingInputs.parse(inputs);
  const timed = events.map(({ t, ...event }): StandingEvent => ({ ...event, at: msOf(t) }));
  return { pieces: Object.fromEntries(standing(timed, msOf(asOf))) };
}

const kinds: Record<string, (inputs: AnyCase['inputs']) => Answer> = {
  hot_hold: (inputs) => answerStep('hot_hold', inputs),
  cooling: (inputs) => answerStep('cooling', inputs),
  reheat: (inputs) => answerStep('reheat', inputs),
  cook: (inputs) => answerStep('cook', inputs),
  cold_hold: (inputs) => answerStep('cold_hold', inputs),
  time_control: (inputs) => answerStep('time_control', inputs),
  noncontinuous: (inputs) => answerStep('noncontinuous', inputs),
  date_mark: answerDateMark,
  probe_check: answerProbeCheck,
  standing: answerStanding,
};

/** The judge's answer to a case; null when no rule is built for its kind. Throws on inputs of another shape. */
export const answer = ({ kind, inputs }: AnyCase): Answer | null =>
  Object.hasOwn(kinds, kind) ? (kinds[kind]?.(inputs) ?? null) : null;
