import type { StageDoc } from './day-schema.ts';
import { reasonsWords } from './exception-words.ts';
import type { SheetNames } from './sheet-names.ts';

/** Stands behind a section whose figure was not read in its own text; `unreadLegend` says what it means. */
const unread = { memory: '*', second_hand: '†' } as const;

/** The section of the code, or that the rule is the house's own. */
export const sectionWords = (names: SheetNames, name: string, stage: StageDoc): string =>
  name === 'house_plan_interval' || stage.section === ''
    ? names.say('sheet.house_plan')
    : `${stage.section}${stage.checked === undefined ? '' : unread[stage.checked]}`;

/** What each sign behind a section of this day means, one line each; none where every figure was read. */
export function unreadLegend({ day, say }: SheetNames): string[] {
  const stages = day.batches.flatMap((batch) => batch.runs.flatMap((run) => Object.values(run.stages)));
  return (['memory', 'second_hand'] as const)
    .filter((way) => stages.some(({ checked }) => checked === way))
    .map((way) => `${unread[way]} ${say(`explain.legend.${way}`)}`);
}

/** Figures and margin in words: what the rule asks, what the record gives. */
export function stageWords(names: SheetNames, name: string, stage: StageDoc): string {
  const { say } = names;
  const parts = [
    stage.open && stage.deadline === null ? say('sheet.still_open') : null,
    stage.open && stage.deadline !== null ? say('sheet.open_by', { by: names.time(stage.deadline) }) : null,
    stage.limit ? say('sheet.asked', { limit: names.limit(stage.limit) }) : null,
    stage.limit_min !== null && name !== 'house_plan_interval'
      ? say('sheet.took_within', {
          limit: names.length(stage.limit_min),
          least: names.length(stage.shortest_min, 'down'),
          most: names.length(stage.longest_min),
        })
      : null,
    margin(names, stage),
    stage.longest_gap_min !== null
      ? say('sheet.longest_gap', { length: names.length(stage.longest_gap_min) })
      : null,
    stage.below_longest_min !== null || stage.below_shortest_min !== null
      ? say('sheet.beyond_for', {
          least: names.length(stage.below_shortest_min ?? 0, 'down'),
          most: names.length(stage.below_longest_min),
        })
      : null,
    stage.last_day ? say('sheet.last_day', { day: names.dayOfMonth(stage.last_day) }) : null,
    stage.pieces_read === null ? null : say('sheet.pieces_read', { count: stage.pieces_read }),
    stage.reasons.length === 0 ? null : say('sheet.because', { reasons: reasonsWords(names, stage.reasons) }),
  ];
  return parts.filter((part) => part !== null).join(' ');
}

/** Minutes to spare of a time limit that was kept; over it, of one that was broken. */
function margin(names: SheetNames, stage: StageDoc): string | null {
  if (stage.limit_min === null || stage.longest_min === null) return null;
  if (stage.verdict === 'kept')
    return names.say('sheet.to_spare', { length: names.length(stage.limit_min - stage.longest_min, 'down') });
  if (stage.verdict === 'broken' && stage.shortest_min !== null && stage.shortest_min > stage.limit_min) {
    return names.say('sheet.over_by', { length: names.length(stage.shortest_min - stage.limit_min, 'down') });
  }
  return null;
}
