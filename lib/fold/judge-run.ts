import type { Stages, Verdict } from '#lib/judge/answer.ts';
import { combine } from '#lib/judge/combine.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import type { Facts, RuleKind, StepRecord } from '#lib/judge/record.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { JudgedRun, Look, Member, Run } from './book.ts';
import { dateMarkOfGroup, dateMarkStage } from './date-mark-of.ts';
import { type FactSources, factsOf, ovenCovered } from './facts.ts';
import type { LocalDays } from './local-days.ts';
import type { ShapeWithLooks } from './looks-of-runs.ts';
import type { Marked } from './marked.ts';
import { planOf } from './plan-of.ts';
import { ruleOfRun } from './rule-of-run.ts';

/** What the judge is asked with, beside the run. */
export type Bench = FactSources & {
  /** What the date mark of a piece is counted from, in the stay that began at `from`, as of `at`. */
  markedOf: (piece: number | null, from: number, at: number) => Marked;
  days: LocalDays;
  /** What roast_cook is for a piece that comes into a step at `at`; undefined for food that is no intact roast. */
  roastCook: (piece: number | null, at: number) => Verdict | 'none' | undefined;
};

/** A run with its bounds, its plan and no verdict yet. */
export function boundsOf(shape: ShapeWithLooks, bench: Bench): Run {
  const members = [...shape.members].sort((a, b) => (a.piece ?? 0) - (b.piece ?? 0) || a.from - b.from);
  const ends = members.map(({ until }) => until);
  const numbers = members.map(({ piece }) => piece).filter((piece) => piece !== null);
  return {
    ...shape,
    members,
    pieces: numbers.length === 0 ? null : numbers,
    start: Math.min(...members.map(({ from }) => from)),
    end: ends.every((end) => end !== null) ? Math.max(...ends) : null,
    planIntervalMin: planOf(bench.kitchen, shape.step, shape.equipment)?.at_most_min ?? null,
  };
}

/** The air of the places that the run was in: it proves nothing, but the judge says when only air was read. */
function airOf(run: Run, bench: Bench): Look[] {
  return run.places.flatMap(({ equipment, at }, index) => {
    const until = run.places[index + 1]?.at ?? run.end ?? bench.asOf;
    const looks = equipment === null ? [] : (bench.air.get(equipment) ?? []);
    return looks.filter((look) => look.at >= at && look.at <= until);
  });
}

/** One piece's own record, with the places of its readings among those of the whole run. */
type Own = { record: StepRecord; places: number[]; read: boolean; ovenCovered: boolean };

function ownRecord(run: Run, member: Member, facts: Facts, bench: Bench, asOf: number): Own {
  const places: number[] = [];
  const readings: Look[] = [];
  let read = false;
  const take = (look: Look, place: number): void => {
    places.push(place);
    readings.push(look);
  };
  run.looks.forEach((look, place) => {
    if (look.piece !== member.piece) return;
    take(look, place);
    read = true;
  });
  run.before.forEach((look, place) => {
    if (look.piece === member.piece || look.piece === null) take(look, run.looks.length + place);
  });
  if (!read) for (const look of airOf(run, bench)) take(look, -1);
  const record: StepRecord = {
    food: { class: bench.food?.class ?? 'unknown', pieces: null },
    facts,
    planIntervalMin: null,
    start: member.from,
    end: member.until,
    asOf,
    readings,
  };
  return { record, places, read, ovenCovered: ovenCovered(run, member, bench) };
}

/** The stages of one record with the readings that decide named by their place in the run. */
function judgedOwn(kind: RuleKind, own: Own, profile: Profile): Stages {
  const stages = judgeStep(kind, own.record, profile);
  if (stages.oven?.verdict === 'kept' && !own.ovenCovered) {
    const facts = { ...own.record.facts, oven_temp: null };
    const { oven } = judgeStep(kind, { ...own.record, facts }, profile);
    if (oven) stages.oven = oven;
  }
  const placed: Stages = {};
  for (const [name, stage] of stageEntries(stages)) {
    if (name === 'house_plan_interval') continue; // of the group, not of one piece
    const rests_on = stage.rests_on.map((index) => own.places[index] ?? -1).filter((place) => place >= 0);
    placed[name] = { ...stage, rests_on };
  }
  return placed;
}

/** Those who were in the run, and the group that looks without a piece speak for. */
function voices(run: Run): Member[] {
  const first = run.members[0];
  const nameless = run.looks.some(
    (look) => !run.members.some((member) => member.piece === look.piece) && look.piece === null,
  );
  const strangers = new Set(
    run.looks
      .map(({ piece }) => piece)
      .filter((piece) => piece !== null && !run.members.some((member) => member.piece === piece)),
  );
  if (!first) return run.members;
  const stand = (piece: number | null): Member => ({ ...first, piece, from: run.start, until: run.end });
  return [...run.members, ...(nameless ? [stand(null)] : []), ...[...strangers].map(stand)];
}

const factsFor = (run: Run, member: Member, bench: Bench): Facts =>
  factsOf(run, member, bench.roastCook(member.piece, member.from), bench);

/** The stages of one piece of a run as of another moment: when was it first shown? Null where no rule is built. */
export function judgeMember(run: Run, member: Member, bench: Bench, asOf: number, from?: number): Stages {
  const kind = ruleOfRun(run, bench.runs);
  if (kind === null || bench.profile === null) return {};
  const own = ownRecord(run, member, factsFor(run, member, bench), bench, asOf);
  if (from !== undefined) own.record.start = from;
  const stages = judgedOwn(kind, own, bench.profile);
  if (kind !== 'cold_hold') return stages;
  return { ...stages, date_mark: markOf(member, bench, asOf, bench.profile).stage };
}

/** The date mark of a piece that is held cold, over calendar days: no reading decides it. */
function markOf(member: Member, bench: Bench, asOf: number, profile: Profile) {
  const { from, until, piece } = member;
  const marked = bench.markedOf(piece, from, until === null ? asOf : Math.min(until, asOf));
  const today = bench.days.of(until === null ? asOf : Math.min(until, asOf));
  return { piece, marked, today, stage: dateMarkStage(marked, { from, until, asOf }, profile, bench.days) };
}

/** Why a run has no stages. */
function unjudged(run: Run, bench: Bench): JudgedRun['reason'] {
  if (ruleOfRun(run, bench.runs) === null) return 'preparation';
  return bench.profile === null ? 'no_figure' : null;
}

/**
 * A run with its verdicts. Each piece is judged by its own stay (a piece may come later and leave earlier); the
 * group's stages are the worst over the pieces that were read, and the house's interval is the group's own.
 * `rests_on` counts the run's `looks` and then its `before`.
 */
export function judgeRun(run: Run, bench: Bench): JudgedRun {
  const reason = unjudged(run, bench);
  const kind = ruleOfRun(run, bench.runs);
  const { profile } = bench;
  if (reason !== null || kind === null || profile === null)
    return { ...run, stages: {}, byPiece: [], reason };
  const marks =
    kind === 'cold_hold' ? run.members.map((member) => markOf(member, bench, bench.asOf, profile)) : [];
  const mark = dateMarkOfGroup(marks.map(({ stage }) => stage));
  const dated = {
    ...(mark === null ? {} : { marked: marks.map(({ piece, marked, today }) => ({ piece, marked, today })) }),
  };
  const each = voices(run).map((member) => {
    const own = ownRecord(run, member, factsFor(run, member, bench), bench, bench.asOf);
    const { record, read } = own;
    const ownMark = marks.find(({ piece }) => piece === member.piece)?.stage;
    const stages = judgedOwn(kind, own, profile);
    return {
      piece: member.piece,
      stages: ownMark === undefined ? stages : { ...stages, date_mark: ownMark },
      read,
      record,
    };
  });
  const byPiece = each.map(({ piece, stages }) => ({ piece, stages }));
  const group: StepRecord = {
    food: { class: bench.food?.class ?? 'unknown', pieces: run.pieces?.length ?? null },
    facts: run.members[0] ? factsFor(run, run.members[0], bench) : {},
    planIntervalMin: run.planIntervalMin,
    start: run.start,
    end: run.end,
    asOf: bench.asOf,
    readings: [...run.looks, ...run.before, ...airOf(run, bench)],
  };
  const whole = judgeStep(kind, group, profile);
  const read = each.filter((piece) => piece.read);
  const withMark = (stages: Stages): Stages => (mark === null ? stages : { ...stages, date_mark: mark });
  if (read.length === 0)
    return {
      ...run,
      ...dated,
      stages: withMark(whole),
      byPiece,
      reason,
      asked: { kind, records: [group] },
    };
  const { house_plan_interval: interval } = whole;
  const stages = combine(
    {
      byPiece: read,
      whole: interval === undefined ? {} : { house_plan_interval: interval },
      read: read.map(({ piece }) => piece),
    },
    group,
  );
  const records = read.map(({ record }) => record);
  return {
    ...run,
    ...dated,
    stages: withMark(goingOn(run, stages)),
    byPiece,
    reason,
    asked: { kind, records },
  };
}

/** Held food that is kept so far goes on being kept, also when some of its pieces have left the group. */
function goingOn(run: Run, stages: Stages): Stages {
  const { at_readings: held } = stages;
  if (run.end !== null || held?.verdict !== 'kept') return stages;
  return { ...stages, at_readings: { ...held, open: true } };
}
