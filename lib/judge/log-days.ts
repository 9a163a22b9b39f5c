import type { Profile } from '#lib/limits/profile.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import type { Stage } from './answer.ts';
import { comesRaw, dateMark, dayOfMark, type MarkedFrom } from './date-mark.ts';
import type { DaysProof } from './explain-days.ts';
import type { LogRow, LogStep } from './log-rows.ts';
import { blankStage } from './stage.ts';

/** A date mark of a log: its stage, and what it was counted from. */
export type LogDays = { stage: Stage; days: DaysProof };

type Seen = { step: LogStep; rows: readonly LogRow[]; end: number | null };

/** Water freezes: food read warmer than this is not frozen. */
const frozenBelow = { degF: 32, degC: 0 } as const;

/** The calendar day of an instant by the offset with which a row was written. */
function dayAt(at: number, like: LogRow): string {
  const offset = /([+-])(\d\d):?(\d\d)$/.exec(like.time);
  const minutes = offset === null ? 0 : Number(offset[2]) * 60 + Number(offset[3]);
  return new Date(at + (offset?.[1] === '-' ? -minutes : minutes) * 60_000).toISOString().slice(0, 10);
}
const dayOf = (row: LogRow): string => dayAt(row.at, row);

type Bounds = Pick<MarkedFrom, 'earliest' | 'latest'>;

/** Made between the day it went on the fire and the day it came off; unless it may have been ready before. */
function cooked(steps: readonly Seen[], food: FoodClass): Bounds | null {
  const place = steps.findIndex(({ step }) => step === 'cook');
  const cook = steps[place];
  const first = cook?.rows[0];
  const like = cook?.rows.at(-1);
  if (cook === undefined || cook.end === null || first === undefined || like === undefined) return null;
  const wasRaw =
    steps.slice(0, place).every(({ step }) => step === 'cold_hold') && (place === 0 || comesRaw.has(food));
  return { earliest: wasRaw ? dayOf(first) : null, latest: dayAt(cook.end, like) };
}

/** The day that the log names as the first, the earliest where it names several; none makes the food younger. */
function boundsOf(steps: readonly Seen[], food: FoodClass, until: number): Bounds | null {
  const made = cooked(steps, food);
  const noted = steps
    .flatMap(({ rows }) => rows.flatMap(({ at, dayOne }) => (at <= until && dayOne !== null ? [dayOne] : [])))
    .sort()
    .at(0);
  const first = steps[0]?.rows[0];
  const by = made?.latest ?? (first === undefined ? null : dayOf(first));
  if (noted !== undefined && (by === null || noted <= by)) return { earliest: noted, latest: noted };
  if (noted !== undefined && made === null) return { earliest: null, latest: by };
  return made;
}

/** The days from day 1 on that surely count: day 1 itself, and those on which a look shows the food not frozen. */
function unfrozen(latest: string, steps: readonly Seen[], until: number): LogRow[] {
  const rows = steps
    .flatMap(({ rows: own }) => own)
    .filter(
      (row) =>
        row.spot !== 'air' && row.at <= until && row.value > frozenBelow[row.unit] && dayOf(row) > latest,
    )
    .sort((a, b) => a.at - b.at);
  return [...new Map(rows.toReversed().map((row) => [dayOf(row), row])).values()].reverse();
}

/**
 * The date mark of a log's cold hold (docs/judge.md 4.7). A log says nothing of freezers: kept is said while the
 * plain calendar allows it, broken when looks show on more days than are allowed that the food was not frozen, and
 * between them it is not shown.
 * @param steps the batch's steps up to and with this one; days are those of the offsets written in the log
 * @returns null where the log neither names a first day nor shows a cook, or the profile has no such rule
 */
export function logDays(
  steps: readonly Seen[],
  { food, asOf, profile }: { food: FoodClass; asOf: number; profile: Profile },
): LogDays | null {
  const rule = profile.figures.date_mark;
  const now = steps.at(-1);
  const until = Math.min(now?.end ?? asOf, asOf);
  const bounds = boundsOf(steps, food, until);
  const like = now?.rows.findLast(({ at }) => at <= until) ?? now?.rows[0];
  if (rule === null || now === undefined || bounds?.latest == null || like === undefined) return null;
  const { earliest, latest } = bounds;
  const today = dayAt(until, like);
  const strict = dateMark({ prepared_on: earliest ?? latest, as_of_date: today }, profile);
  const shown = unfrozen(latest, steps, until);
  const past = 1 + shown.length > rule.days.days ? shown[rule.days.days - 1] : undefined;
  const isPast = dayOfMark(latest, today, []) > rule.days.days;
  const isOpen = now.end === null || now.end > asOf;
  const stage: Stage = { ...blankStage(strict.section), last_day: strict.last_day };
  if (past !== undefined)
    Object.assign(stage, {
      verdict: 'broken',
      first_bad: past.at,
      rests_on: shown.slice(0, rule.days.days).map(({ line }) => line),
      next: { action: 'stop_and_tag', by: null },
    });
  else if (earliest === null) stage.reasons = ['start_unknown'];
  else if (strict.verdict === 'kept') Object.assign(stage, { verdict: 'kept', open: isOpen });
  else stage.reasons = isPast ? ['brackets_too_wide'] : ['disputed'];
  const marked = { earliest, latest, frozen: [], outside: null };
  const days = { piece: null, verdict: stage.verdict, last_day: strict.last_day, marked, today };
  return { stage, days: { ...days, unfrozen: isPast ? [latest, ...shown.map(dayOf)] : null } };
}
