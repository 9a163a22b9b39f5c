import type { Reason, Stage, Verdict } from '#lib/judge/answer.ts';
import { type DateVerdict, dateMark } from '#lib/judge/date-mark.ts';
import { blankStage, notApplicable, sorted } from '#lib/judge/stage.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { dayAfter, type LocalDays } from './local-days.ts';
import type { Marked } from './marked.ts';

/**
 * The date mark of one piece that is held cold (docs/judge.md 4.7), from what the record shows of its day 1.
 *
 * The record gives day 1 between two days: food that went on the fire one evening and came off the next morning was
 * made on one of the two. Kept is said when the earlier day allows it, broken when the later one does not, and
 * between them it is not shown. Nobody knows how old food is that came into the book already made: then only the
 * later bound counts, and it can be broken and never kept.
 * @param until when it left the cold, ms; null = it is still there
 */
export function dateMarkStage(
  marked: Marked,
  when: { from: number; until: number | null; asOf: number },
  profile: Profile,
  days: LocalDays,
): Stage {
  const section = profile.figures.date_mark?.days.section ?? '';
  if (profile.figures.date_mark === null || marked.outside !== null)
    return notApplicable(section, 'no_figure');
  const { until, asOf } = when;
  const today = days.of(until === null ? asOf : Math.min(until, asOf));
  const found = judgedOn(marked, today, profile);
  const stage: Stage = {
    ...blankStage(section),
    verdict: found.verdict,
    open: found.verdict === 'kept' && (until === null || until > asOf),
    reasons: sorted([...found.reasons]),
    last_day: found.last_day,
  };
  if (found.verdict !== 'broken') return stage;
  const since = days.start(firstBroken(marked, today, profile));
  return {
    ...stage,
    first_bad: Math.max(since, when.from),
    next: { action: 'stop_and_tag', by: null },
  };
}

type Found = { verdict: Verdict; reasons: readonly Reason[]; last_day: string | null };

function judgedOn({ earliest, latest, frozen }: Marked, today: string, profile: Profile): Found {
  const from = (day: string | null): DateVerdict | null =>
    day === null ? null : dateMark({ prepared_on: day, frozen, as_of_date: today }, profile);
  const strict = from(earliest);
  const mild = from(latest);
  const lastDay = (strict ?? mild)?.last_day ?? null;
  if (mild?.verdict === 'broken') return { verdict: 'broken', reasons: [], last_day: lastDay };
  if (strict === null) return { verdict: 'not_shown', reasons: ['start_unknown'], last_day: lastDay };
  if (strict.verdict === 'kept') return { verdict: 'kept', reasons: [], last_day: lastDay };
  return { verdict: 'not_shown', reasons: ['disputed'], last_day: lastDay };
}

/** The first day on which it was broken: the one after the last day that the mildest count still allows. */
function firstBroken(marked: Marked, today: string, profile: Profile): string {
  const { latest, frozen } = marked;
  const mild = latest === null ? null : dateMark({ prepared_on: latest, frozen, as_of_date: today }, profile);
  let day = mild?.last_day ?? today;
  while (day < today && judgedOn(marked, day, profile).verdict !== 'broken') day = dayAfter(day);
  return day;
}

const worst: readonly Verdict[] = ['broken', 'not_shown', 'kept', 'not_applicable'];

/** The date mark of a group: the worst of its pieces', the earliest last day, the first that was past it. */
export function dateMarkOfGroup(stages: readonly Stage[]): Stage | null {
  const [first] = stages;
  if (first === undefined) return null;
  const verdict = worst.find((one) => stages.some((stage) => stage.verdict === one)) ?? first.verdict;
  const same = stages.filter((stage) => stage.verdict === verdict);
  const lastDays = stages.flatMap((stage) => stage.last_day ?? []).sort();
  const bad = stages.flatMap((stage) => stage.first_bad ?? []);
  const [lead = first] = same;
  return {
    ...lead,
    open: verdict !== 'broken' && stages.some((stage) => stage.open),
    reasons: sorted(same.flatMap((stage) => stage.reasons)),
    last_day: lastDays[0] ?? null,
    ...(bad.length === 0 ? {} : { first_bad: Math.min(...bad) }),
  };
}
