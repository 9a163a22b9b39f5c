import type { StageName, Verdict } from '#lib/judge/answer.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import type { Facts, JudgedReading, RuleKind } from '#lib/judge/record.ts';
import type { Figures, Profile } from '#lib/limits/profile.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import type { Unit } from '#shared/units.ts';
import { around, inTime, keeps, roughly, secondsAround, units } from './published.ts';
import { at, reading, record } from './records.ts';

/** One look across a figure: the path of the figure in its profile, what was asked and what was answered. */
export type Case = { covers: string; what: string; expected: Verdict; actual: Verdict | undefined };

type Figure = Parameters<typeof keeps>[0];
type Within = Parameters<typeof inTime>[0];

/** Far from every figure. */
export const [freezing, boiling, long] = [{ degF: 20 }, { degF: 212 }, 99_999];

export type Asked = {
  kind: RuleKind;
  stage: StageName;
  profile: Profile;
  class?: FoodClass;
  facts?: Facts;
  start?: number;
  end?: number;
};

export type Published = { figures: Figures };

/** The verdict of one stage on these readings, seen long after the last. */
export function verdictOf({ kind, stage, profile, facts = {}, ...asked }: Asked, readings: JudgedReading[]) {
  const bounds = { start: asked.start ?? null, end: asked.end ?? null };
  const one = record(readings, { ...bounds, class: asked.class ?? 'poultry', facts, asOf: at(100_000) });
  return judgeStep(kind, one, profile)[stage]?.verdict;
}

/** A look in tenths of a degree; the thick part unless told otherwise, its seconds counted as long as any. */
export const look = (minutes: number, ofTenths: number, unit: Unit, more: Partial<JudgedReading> = {}) =>
  reading(minutes, ofTenths / 10, { unit, spot: 'core', held_s: long, ...more });
export const far = (minutes: number, { degF }: { degF: number }) => look(minutes, degF * 10, 'degF');

/** Just below, exactly at and just above a temperature, in both units. */
export function temperature(
  covers: string,
  figure: Figure,
  answer: (ofTenths: number, unit: Unit) => Verdict | undefined,
  { yes = 'kept', no = 'broken' }: { yes?: Verdict; no?: Verdict } = {},
): Case[] {
  return units.flatMap((unit) =>
    around(figure.value, unit).map((ofTenths) => ({
      covers: `${covers}.value`,
      what: `${ofTenths / 10} ${unit}`,
      expected: keeps(figure, unit, ofTenths) ? yes : no,
      actual: answer(ofTenths, unit),
    })),
  );
}

/** One second under a limit of time, exactly it, one second over. */
export function time(
  covers: string,
  within: Within,
  answer: (minutes: number) => Verdict | undefined,
  no: Verdict = 'broken',
): Case[] {
  return secondsAround(within.minutes).map((seconds) => ({
    covers: `${covers}.minutes`,
    what: `${seconds} s`,
    expected: inTime(within, seconds) ? 'kept' : no,
    actual: answer(seconds / 60),
  }));
}

/** The other end of a bracket: not done after exactly the limit is broken, whichever way the limit is worded. */
export function lateBy(
  covers: string,
  { minutes }: Within,
  answer: (minutes: number) => Verdict | undefined,
): Case[] {
  return secondsAround(minutes).map((seconds) => ({
    covers: `${covers}.minutes`,
    what: `still not done after ${seconds} s`,
    expected: seconds >= minutes * 60 ? 'broken' : 'not_shown',
    actual: answer(seconds / 60),
  }));
}

/** Between two figures, in °F. */
export const between = (a: Figure, b: Figure) => ({
  degF: Math.round(5 * (roughly(a.value) + roughly(b.value))) / 10,
});

/** One second under, exactly and one second over the seconds that are asked; with none asked, none noted is enough. */
export function seconds(
  covers: string,
  asked: number,
  answer: (held: number | null) => Verdict | undefined,
  no: Verdict,
): Case[] {
  const held = asked === 0 ? [null, 0, 1] : [asked - 1, asked, asked + 1];
  return held.map((value) => ({
    covers,
    what: `${value} s`,
    expected: (value ?? 0) >= asked ? 'kept' : no,
    actual: answer(value),
  }));
}

export const cared: Facts = { covered: true, stirred: true, stood_s: long };
