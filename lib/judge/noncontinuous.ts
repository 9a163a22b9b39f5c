import type { Figures, Profile } from '#lib/limits/profile.ts';
import { minutesBetween } from '#shared/time.ts';
import type { Stage, StageName, Stages } from './answer.ts';
import { byChart } from './chart.ts';
import { combine, type Judged, worstOf } from './combine.ts';
import { cooling } from './cooling.ts';
import { asksFact } from './facts-asked.ts';
import type { StepRecord } from './record.ts';
import { blankStage, notApplicable, stageEntries } from './stage.ts';

type Rule = NonNullable<Figures['noncontinuous']>;

const order: readonly StageName[] = ['initial_heating', 'cooling', 'final_cook', 'procedure'];

/**
 * When the first heat began and ended and the last cook began, as far as is seen. In ms; null = not yet. What lies
 * after the step's end is not of the step, as its readings are not.
 */
type Moments = {
  heatFrom: number | null;
  heatTo: number | null;
  finalFrom: number | null;
  until: number; // the step's end, or as_of while it goes on
  goesOn: boolean;
};

function momentsOf({ facts, end, asOf }: StepRecord): Moments {
  const goesOn = end === null || end > asOf;
  const last = goesOn ? asOf : end;
  const seen = (at: number | null | undefined): number | null =>
    at === null || at === undefined || at > last ? null : at;
  return {
    heatFrom: seen(facts.heat_from),
    heatTo: seen(facts.heat_to),
    finalFrom: seen(facts.final_from),
    until: last,
    goesOn,
  };
}

/**
 * The first heating: over its time, or still on when the time is over, is broken. In a step that ended before its
 * time was over it was not on for longer than the step, and without its own end nothing more is shown of it.
 */
function initialHeating(
  { asOf }: StepRecord,
  { heatFrom, heatTo, until, goesOn }: Moments,
  { initial_heating: within }: Rule,
): Stage {
  const stage: Stage = { ...blankStage(within.section), limit_min: within.minutes };
  if (heatFrom === null) return { ...stage, reasons: ['start_unknown'] };
  const length = minutesBetween(heatFrom, heatTo ?? until);
  const deadline = heatFrom + within.minutes * 60_000;
  const timed: Stage = {
    ...stage,
    longest_min: heatTo === null ? null : length,
    shortest_min: Math.max(0, length),
    deadline,
    remaining_min: minutesBetween(asOf, deadline),
  };
  const isOver = within.comparison === 'less_than' ? length >= within.minutes : length > within.minutes;
  if (isOver) return { ...timed, verdict: 'broken', next: { action: 'stop_and_tag', by: null } };
  if (heatTo === null) return { ...timed, open: goesOn, reasons: ['not_reached'] };
  if (length < 0) return { ...timed, longest_min: null, reasons: ['start_unknown'] };
  return { ...timed, verdict: 'kept' };
}

type Part = {
  byPiece: { piece: number | null; stage: Stage }[];
  whole: Stage | null;
  read: (number | null)[];
};

const wholePart = (whole: Stage): Part => ({ byPiece: [], whole, read: [] });

/** The worse of the cooling stages over the readings between the two heatings; the heat's end can be its start. */
function coolingPart(record: StepRecord, moments: Moments, rule: Rule, profile: Profile): Part {
  const { heatTo, finalFrom, goesOn } = moments;
  const { section } = rule.cooling;
  if (profile.figures.cooling.length === 0) return wholePart(notApplicable(section, 'no_figure'));
  // From the last cook on no reading is of the cooling, whenever the first heat ended.
  const mayCome = goesOn && finalFrom === null;
  if (heatTo === null) return wholePart({ ...blankStage(section), open: mayCome, reasons: ['not_reached'] });
  const between: StepRecord = {
    ...record,
    facts: {},
    planIntervalMin: null,
    start: heatTo,
    end: finalFrom ?? record.end,
  };
  const judged = cooling(between, profile, heatTo);
  const worse = (stages: Stages): Stage => ({
    ...worstOf(
      stageEntries(stages).map(([, stage]) => stage),
      record.asOf,
    ),
    section,
  });
  if (judged.byPiece.length === 0) return wholePart(worse(combine(judged, record)));
  return {
    byPiece: judged.byPiece.map(({ piece, stages }) => ({ piece, stage: worse(stages) })),
    whole: null,
    read: judged.read,
  };
}

/** The last cook by the food's own row, or by one chart for all foods where an edition asks that. */
function finalPart(
  record: StepRecord,
  { finalFrom, goesOn }: Moments,
  rule: Rule,
  { figures }: Profile,
): Part {
  const { section } = rule.final_cook;
  const { class: foodClass } = record.food;
  const own = foodClass === 'intact_roast' ? (figures.roast_chart ?? undefined) : undefined;
  const chart = rule.final_chart ?? own ?? figures.cook[foodClass];
  if (chart === undefined) return wholePart(notApplicable(section, 'no_figure'));
  if (finalFrom === null)
    return wholePart({ ...blankStage(section), open: goesOn, reasons: ['not_reached'] });
  const last: StepRecord = { ...record, facts: {}, start: finalFrom };
  const { byPiece, whole, read } = byChart(last, { chart, section, care: null });
  return {
    byPiece: byPiece.flatMap(({ piece, stages: { temperature } }) =>
      temperature === undefined ? [] : { piece, stage: temperature },
    ),
    whole: whole.temperature ?? null,
    read,
  };
}

/** Each piece with the stages that it has of the two. */
function joined(parts: { cooling: Part; final_cook: Part }): Judged['byPiece'] {
  const pieces = new Map<number | null, Stages>();
  for (const name of ['cooling', 'final_cook'] as const)
    for (const { piece, stage } of parts[name].byPiece)
      pieces.set(piece, { ...pieces.get(piece), [name]: stage });
  return [...pieces].map(([piece, stages]) => ({ piece, stages }));
}

/**
 * Non-continuous cooking, FDA Food Code 2022 3-401.14 by docs/judge.md 4.8: a short first heating, cooling at once
 * by the cooling rule, a last cook by the food's own row, and procedures in writing that were approved.
 */
export function noncontinuous(record: StepRecord, profile: Profile): Judged {
  const rule = profile.figures.noncontinuous;
  if (rule === null) {
    const none = notApplicable('', 'no_figure');
    return {
      byPiece: [],
      whole: { initial_heating: none, cooling: none, final_cook: none, procedure: none },
      read: [],
    };
  }
  const moments = momentsOf(record);
  const cooled = coolingPart(record, moments, rule, profile);
  const cooked = finalPart(record, moments, rule, profile);
  return {
    byPiece: joined({ cooling: cooled, final_cook: cooked }),
    whole: {
      initial_heating: initialHeating(record, moments, rule),
      ...(cooled.whole === null ? {} : { cooling: cooled.whole }),
      ...(cooked.whole === null ? {} : { final_cook: cooked.whole }),
      procedure: asksFact(rule.procedure.section, [record.facts.written, record.facts.approved]),
    },
    read: cooked.read,
    readFor: { cooling: cooled.read, final_cook: cooked.read },
    byFacts: ['initial_heating', 'procedure'],
    order,
  };
}
