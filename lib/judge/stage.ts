import { isoOf } from '#shared/time.ts';
import type { Reason, Stage, StageName, Stages } from './answer.ts';

/** A stage with nothing said yet: every length unknown, no reason, no reading. */
export function blankStage(section: string): Stage {
  return {
    verdict: 'not_shown',
    open: false,
    section,
    limit: null,
    limit_min: null,
    longest_min: null,
    shortest_min: null,
    deadline: null,
    remaining_min: null,
    reasons: [],
    next: null,
    rests_on: [],
  };
}

/** The rule does not speak of this food or step. */
export const notApplicable = (section: string, reason: Reason): Stage => ({
  ...blankStage(section),
  verdict: 'not_applicable',
  reasons: [reason],
});

/** Reasons without repeats, sorted by name. */
export const sorted = (reasons: Reason[]): Reason[] =>
  reasons.length < 2 ? reasons : [...new Set(reasons)].sort();

const written = (at: number | null): string | null => (at === null ? null : isoOf(at));

/** A stage as it leaves the program: instants as ISO text in UTC. Members that the stage does not have stay out. */
export function stageJson(stage: Stage): Record<string, unknown> {
  return {
    ...stage,
    deadline: written(stage.deadline),
    next: stage.next === null ? null : { action: stage.next.action, by: written(stage.next.by) },
    ...(stage.first_bad === undefined ? {} : { first_bad: written(stage.first_bad) }),
  };
}

/** All stages of a step as they leave the program. */
export const stagesJson = (stages: Stages): Record<string, unknown> =>
  Object.fromEntries(Object.entries(stages).map(([name, stage]) => [name, stageJson(stage)]));

/** The stages of a step by name, in the order in which the rule gives them. */
export const stageEntries = (stages: Stages): [StageName, Stage][] =>
  Object.entries(stages) as [StageName, Stage][];

/** The names of a step's stages, in that order. */
export const stageNames = (stages: Stages): StageName[] => Object.keys(stages) as StageName[];
