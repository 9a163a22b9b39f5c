import type { StageName, Stages } from '#lib/judge/answer.ts';
import type { Finding, Scene } from './claim.ts';
import { sceneOf } from './claim.ts';
import { coolingClaims } from './claim-cooling.ts';
import { cookClaims, reheatClaims } from './claim-heat.ts';
import { holdClaims } from './claim-hold.ts';
import type { History } from './history.ts';

const claimsOf = (scene: Scene, stages: Stages): Finding[] => {
  switch (scene.history.kind) {
    case 'hot_hold':
    case 'cold_hold':
      return holdClaims(scene, stages);
    case 'cooling':
      return coolingClaims(scene, stages);
    case 'reheat':
      return reheatClaims(scene, stages);
    case 'cook':
      return cookClaims(scene, stages);
    default:
      return [];
  }
};

/** Stages that no sentence of the machine speaks of: an oven's line is a fact and no curve. */
export const unclaimed: ReadonlySet<StageName> = new Set(['oven']);

/** Every verdict whose own sentence is not true of the food as it was. */
export function findingsOf(history: History, stages: Stages): Finding[] {
  const scene = sceneOf(history);
  return scene === null ? [] : claimsOf(scene, stages);
}
