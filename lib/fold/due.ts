import type { Stage, StageName, Stages } from '#lib/judge/answer.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import { presentIn, profileOf } from './ask.ts';
import type { Book, Due, JudgedRun, Look } from './book.ts';
import { sideOf } from './good.ts';
import { planOf } from './plan-of.ts';

const minute = 60_000;
/** A look this long before a checkpoint is the look of that checkpoint: common practice. */
const checkpointSlack = 10 * minute;

/** The last look at the group by which the plan counts: one that can prove something, suspect ones left out. */
function lastLooked(book: Book, run: JudgedRun): number | null {
  const profile = profileOf(book);
  const proves = (look: Look): boolean =>
    !look.suspect && (profile === null || sideOf(look, run.step, run.stages, profile) !== 'neither');
  return run.looks.findLast(proves)?.at ?? null;
}

/** The first checkpoint after the last look, counted from the earliest start of those who are there. */
function nextCheckpoint(checkpoints: readonly number[], start: number, last: number | null): number | null {
  const moments = checkpoints.map((after) => start + after * minute).sort((a, b) => a - b);
  return moments.find((at) => last === null || at - checkpointSlack > last) ?? null;
}

/** Stages of the pieces that are there now; of the group where no piece was judged. */
function stagesNow(run: JudgedRun): Stages[] {
  const here = new Set(presentIn(run).map(({ piece }) => piece));
  const own = run.byPiece.filter(({ piece }) => piece === null || here.has(piece));
  return own.length > 0 ? own.map(({ stages }) => stages) : [run.stages];
}

/**
 * The earliest deadline that still asks for something: of a stage that is open, or one that is over with the
 * figure not yet reached by any look (nobody knows, so look now).
 */
export function openDeadline(
  run: JudgedRun,
  now: number,
): { at: number; stage: StageName; judged: Stage } | null {
  let first: { at: number; stage: StageName; judged: Stage } | null = null;
  for (const stages of run.end === null ? stagesNow(run) : []) {
    for (const [stage, judged] of stageEntries(stages)) {
      const { deadline: at, verdict, reasons } = judged;
      if (at === null) continue;
      const isOver = verdict === 'not_shown' && at < now && reasons.includes('not_reached');
      if ((judged.open || isOver) && (first === null || at < first.at)) first = { at, stage, judged };
    }
  }
  return first;
}

/**
 * What is due for one group: by the house's plan ("every" and "at most", or checkpoints after the start) and by
 * the rule's own deadline. Null members: the plan asks nothing.
 */
export function dueOf(book: Book, run: JudgedRun): Due {
  const plan = planOf(book.kitchen, run.step, run.equipment);
  const last = lastLooked(book, run);
  const start = Math.min(...presentIn(run).map(({ from }) => from), Number.POSITIVE_INFINITY);
  const since = last ?? (Number.isFinite(start) ? start : run.start);
  const checkpoint = nextCheckpoint(
    plan?.checkpoints_min ?? [],
    Number.isFinite(start) ? start : run.start,
    last,
  );
  const every = plan?.every_min ?? plan?.at_most_min ?? null;
  const atMost = plan?.at_most_min ?? every;
  const byPlan = every === null ? null : since + every * minute;
  const dueAt =
    byPlan === null || checkpoint === null ? (byPlan ?? checkpoint) : Math.min(byPlan, checkpoint);
  const latest = atMost === null ? null : since + atMost * minute;
  const deadline = openDeadline(run, book.asOf);
  return {
    run: run.key,
    batch: run.batch,
    equipment: run.equipment,
    dueAt,
    latestAt: latest === null || checkpoint === null ? (latest ?? checkpoint) : Math.min(latest, checkpoint),
    deadline: deadline && { at: deadline.at, action: deadline.judged.next?.action ?? 'look_again' },
  };
}
