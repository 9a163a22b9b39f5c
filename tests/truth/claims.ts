import type { Stages } from '#lib/judge/answer.ts';
import type { Finding, Scene } from './claim.ts';
import { sceneOf } from './claim.ts';
import { coolingClaims } from './claim-cooling.ts';
import { cookClaims, reheatClaims } from './claim-heat.ts';
import { holdClaims } from './claim-hold.ts';
import { partClaims } from './claim-parts.ts';
import { timeClaims } from './claim-time.ts';
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
    case 'time_control':
      return timeClaims(scene, stages);
    case 'noncontinuous':
      return partClaims(scene, stages);
  }
};

/** Every verdict whose own sentence is not true of the food as it was. */
export function findingsOf(history: History, stages: Stages): Finding[] {
  const scene = sceneOf(history);
  return scene === null ? [] : claimsOf(scene, stages);
}
