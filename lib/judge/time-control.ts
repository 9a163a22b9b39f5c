import type { Profile } from '#lib/limits/profile.ts';
import { minutesBetween } from '#shared/time.ts';
import type { Stage, StageName, Stages } from './answer.ts';
import type { Judged } from './combine.ts';
import { byPiece, span } from './evidence.ts';
import { asksFact } from './facts-asked.ts';
import { heldAtMost } from './held-to.ts';
import { holdPass } from './hold-pass.ts';
import { heldAtReadings } from './hold-stages.ts';
import type { StepRecord } from './record.ts';
import { blankStage, notApplicable } from './stage.ts';
import { type Started, startStage, startsFor, type TimeForm, type TimeStart } from './time-start.ts';

const order: readonly StageName[] = ['procedure', 'marking', 'start', 'time', 'warmth'];

/** When the food left control and when it was served or thrown away, as far as is seen. In ms; null = not known. */
type Out = { removedAt: number | null; goneAt: number | null };

function outOf({ facts, start, asOf }: StepRecord): Out {
  const seen = (at: number | null): number | null => (at !== null && at <= asOf ? at : null);
  return { removedAt: seen(facts.removed_at ?? start), goneAt: seen(facts.gone_at ?? null) };
}

/** The last moment whose readings are of the step: gone, or ended, whichever was first. */
function lastMoment({ end }: StepRecord, { goneAt }: Out): number | null {
  if (goneAt === null || end === null) return goneAt ?? end;
  return Math.min(goneAt, end);
}

/** From leaving control to being served or thrown away. While it is out nothing is kept: the time runs. */
function timeStage({ asOf }: StepRecord, { removedAt, goneAt }: Out, { within }: TimeForm): Stage {
  const stage: Stage = { ...blankStage(within.section), limit_min: within.minutes };
  if (removedAt === null) return { ...stage, reasons: ['start_unknown'] };
  const length = minutesBetween(removedAt, goneAt ?? asOf);
  const deadline = removedAt + within.minutes * 60_000;
  const timed: Stage = {
    ...stage,
    longest_min: goneAt === null ? null : length,
    shortest_min: Math.max(0, length),
    deadline,
    remaining_min: minutesBetween(asOf, deadline),
  };
  const isOver = within.comparison === 'less_than' ? length >= within.minutes : length > within.minutes;
  if (isOver) return { ...timed, verdict: 'broken', next: { action: 'stop_and_tag', by: null } };
  if (goneAt === null)
    return { ...timed, open: true, reasons: ['not_reached'], next: { action: 'use_by', by: deadline } };
  // Gone before it was taken out: one of the two is wrong, and the record shows neither.
  if (length < 0) return { ...timed, longest_min: null, reasons: ['start_unknown'] };
  return { ...timed, verdict: 'kept' };
}

/**
 * How warm it got while it was out: the six hours of cold food, and a start that an edition adds on that condition.
 * A start that needs no condition (cold enough, hot enough) leaves nothing to ask.
 */
function staysOf({ stays }: TimeForm, starts: readonly TimeStart[], started: Started) {
  if (stays !== null) return stays;
  return started.without ? null : (starts.find((start) => start.stays !== undefined)?.stays ?? null);
}

/** No reading while it was out above the figure: `at_readings` of a maximum. */
function warmth(record: StepRecord, when: Out, stays: ReturnType<typeof staysOf>): Judged {
  const { removedAt } = when;
  if (stays === null) return { byPiece: [], whole: { warmth: notApplicable('', 'no_figure') }, read: [] };
  const to = heldAtMost(stays);
  if (removedAt === null) {
    const limit = to.limit.limit;
    const unknown: Stage = { ...blankStage(to.section), limit, reasons: ['start_unknown'] };
    return { byPiece: [], whole: { warmth: unknown }, read: [] };
  }
  const out: StepRecord = {
    ...record,
    start: removedAt,
    end: lastMoment(record, when),
    planIntervalMin: null,
  };
  const { byPiece: pieces, whole, read } = heldAtReadings(out, to, holdPass(out, to), 'pieces');
  const only = ({ at_readings: held }: Stages): Stages => (held === undefined ? {} : { warmth: held });
  return {
    byPiece: pieces.map(({ piece, stages }) => ({ piece, stages: only(stages) })),
    whole: only(whole),
    read,
  };
}

/** Each piece with the stages that it has of the two. */
function joined(starts: ReadonlyMap<number | null, Stage>, warmths: Judged['byPiece']): Judged['byPiece'] {
  const pieces = new Map<number | null, Stages>();
  for (const [piece, start] of starts) pieces.set(piece, { start });
  for (const { piece, stages } of warmths) pieces.set(piece, { ...pieces.get(piece), ...stages });
  return [...pieces].map(([piece, stages]) => ({ piece, stages }));
}

/**
 * Time instead of temperature, FDA Food Code 2022 3-501.19 by docs/judge.md 4.6: a procedure in writing, a mark, a
 * start cold or hot enough, gone within the time, and for cold food never too warm. Kept says of `time`: it was
 * served or thrown away no later than the time after it left control. Afterwards it never returns to it. A mode
 * that nobody noted is the four hours.
 */
export function timeControl(record: StepRecord, profile: Profile): Judged {
  const rule = profile.figures.time_control;
  const form = record.facts.mode === '6h' ? rule?.six_hours : rule?.four_hours;
  if (rule === null || form === null || form === undefined) {
    const none = notApplicable(rule?.procedure.section ?? '', 'no_figure');
    return {
      byPiece: [],
      whole: { procedure: none, marking: none, start: none, time: none, warmth: none },
      read: [],
    };
  }
  const out = outOf(record);
  const starts = startsFor(form, record.facts.starts_as ?? null);
  const { pieces, airRead } = byPiece(record, span({ ...record, start: null, end: lastMoment(record, out) }));
  const started = startStage(record, pieces, out.removedAt, starts, airRead);
  const warm = warmth(record, out, staysOf(form, starts, started));
  return {
    byPiece: joined(started.stages, warm.byPiece),
    whole: {
      procedure: asksFact(rule.procedure.section, [record.facts.written_procedure]),
      marking: asksFact(rule.marking.section, [record.facts.marked]),
      time: timeStage(record, out, form),
      ...(started.whole === null ? {} : { start: started.whole }),
      ...warm.whole,
    },
    read: started.read,
    readFor: { start: started.read, warmth: warm.read },
    byFacts: ['procedure', 'marking', 'time'],
    order,
  };
}
