import type { Profile } from '#lib/limits/profile.ts';
import { care } from './care.ts';
import { byChart } from './chart.ts';
import { type Judged, worstOf } from './combine.ts';
import { comeUp } from './come-up.ts';
import type { StepRecord } from './record.ts';
import { byRoastChart } from './roast.ts';
import { notApplicable } from './stage.ts';

/**
 * Cooking, FDA Food Code 2022 3-401.11, .12 and .13 by docs/judge.md 4.4. The class decides the row; a class that
 * was cooked before has none, and one that nobody knows is read on the strictest. A roast has its chart and oven
 * line, food in a microwave one figure and its care. Where a profile asks a come-up time, that is a stage beside.
 */
export function cook(record: StepRecord, profile: Profile): Judged {
  const judged = cookTemperature(record, profile);
  const rule = profile.figures.come_up;
  if (judged === null) {
    const none = notApplicable('', 'no_figure');
    const both = rule === null ? { temperature: none } : { temperature: none, come_up: none };
    return { byPiece: [], whole: both, read: [] };
  }
  if (rule === null) return judged;
  const risen = comeUp(record, rule);
  if (judged.byPiece.length === 0)
    return {
      ...judged,
      whole: {
        ...judged.whole,
        come_up: worstOf(
          risen.map(({ stage }) => stage),
          record.asOf,
        ),
      },
    };
  const stageOf = new Map(risen.map(({ piece, stage }) => [piece, stage]));
  return {
    ...judged,
    byPiece: judged.byPiece.map(({ piece, stages }) => {
      const stage = stageOf.get(piece);
      return { piece, stages: stage === undefined ? stages : { ...stages, come_up: stage } };
    }),
  };
}

/** Null: the profile has no cooking figure for this food. */
function cookTemperature(record: StepRecord, profile: Profile): Judged | null {
  const { figures } = profile;
  const { class: foodClass } = record.food;
  const microwave = figures.cook_microwave;
  if (record.facts.method === 'microwave' && microwave !== null) {
    const { chart } = microwave;
    return byChart(record, { chart, section: chart.section, care: care(record, microwave.stand_s) });
  }
  if (foodClass === 'intact_roast' && figures.roast_chart !== null) return byRoastChart(record, profile);
  const chart = figures.cook[foodClass];
  return chart === undefined ? null : byChart(record, { chart, section: chart.section, care: null });
}
