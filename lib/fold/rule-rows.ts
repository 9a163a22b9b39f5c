import type { Stage, StageName, Verdict } from '#lib/judge/answer.ts';
import { naturalHot } from '#lib/judge/evidence.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import { conventions } from '#lib/limits/conventions.ts';
import { minutesBetween } from '#shared/time.ts';
import type { Batch, JudgedRun } from './book.ts';
import { restsOn } from './rests-on.ts';
import type { RuleRow } from './views.ts';

const order: readonly Verdict[] = ['broken', 'not_shown', 'kept', 'not_applicable'];

/** About witness or about the house's plan: never above a published rule of the same verdict. */
const lesser: ReadonlySet<StageName> = new Set(['between_readings', 'house_plan_interval']);

export const worseFirst = (
  a: { name: StageName; stage: Stage },
  b: { name: StageName; stage: Stage },
): number =>
  Number(lesser.has(a.name)) - Number(lesser.has(b.name)) ||
  order.indexOf(a.stage.verdict) - order.indexOf(b.stage.verdict) ||
  (a.stage.deadline ?? Number.POSITIVE_INFINITY) - (b.stage.deadline ?? Number.POSITIVE_INFINITY);

/**
 * Kept, and some piece was looked at in its thick part alone at some look: that says little of its thin end.
 * (A thin end read within five minutes speaks for the same look: docs/judge.md, section 2.)
 */
function atThickPartOnly(run: JudgedRun, name: StageName): boolean {
  if (name !== 'at_readings') return false;
  return run.byPiece.some(({ stages }) => {
    const stage = stages[name];
    if (stage?.verdict !== 'kept' || !stage.reasons.includes('spot_not_natural')) return false;
    const looks = restsOn(run, stage);
    const natural = looks.filter(({ spot }) => naturalHot(spot));
    const alone = looks.filter(
      (look) => !natural.some((other) => Math.abs(minutesBetween(other.at, look.at)) <= conventions.look_min),
    );
    return alone.length > 0 && alone.every(({ spot }) => spot === 'core');
  });
}

function rowsOf(run: JudgedRun): RuleRow[] {
  return stageEntries(run.stages).map(([name, judged]) => ({
    run: run.key,
    step: run.step,
    stage: name,
    pieces: run.pieces,
    equipment: run.equipment,
    judged,
    byPiece: run.byPiece.flatMap(({ piece, stages }) => {
      const own = stages[name];
      return own ? [{ piece, judged: own }] : [];
    }),
    thickPartOnly: atThickPartOnly(run, name),
  }));
}

/** One row a rule and step of a batch, worst first; of equals the newest step first. */
export function ruleRows(batch: Batch): RuleRow[] {
  const newest = new Map(batch.runs.map((run, index) => [run.key, batch.runs.length - index]));
  return batch.runs
    .flatMap(rowsOf)
    .sort(
      (a, b) =>
        worseFirst({ name: a.stage, stage: a.judged }, { name: b.stage, stage: b.judged }) ||
        (newest.get(a.run) ?? 0) - (newest.get(b.run) ?? 0),
    );
}

/**
 * The rows that a reader needs first, and the ones of earlier steps that are settled: the step has ended, the
 * rule was kept, and not at the thick part alone. A batch without a later step has none of the second.
 */
export function rowsApart(batch: Batch): { now: RuleRow[]; earlier: RuleRow[] } {
  const ended = new Set(batch.runs.filter(({ end }) => end !== null).map(({ key }) => key));
  const last = batch.runs.at(-1)?.key;
  const settled = (row: RuleRow) =>
    ended.has(row.run) && row.run !== last && row.judged.verdict === 'kept' && !row.thickPartOnly;
  const rows = ruleRows(batch);
  return { now: rows.filter((row) => !settled(row)), earlier: rows.filter(settled) };
}
