import type { Stages } from '#lib/judge/answer.ts';
import { claimedOf, type Finding } from './claim.ts';
import type { History } from './history.ts';

/**
 * The oven line of docs/judge.md 4.4 on the oven in which the roast truly was, whatever of it was noted. A pit is
 * read as a dry oven and is never broken.
 */
export function ovenClaims({ profile, truth }: History, stages: Stages): Finding[] {
  const table = profile.figures.roast_oven;
  const { oven, oven_temp: degF = null, mass_lb: massLb = null } = truth;
  const line = table?.lines.find((one) => one.oven === (oven === 'pit' ? 'still_dry' : oven));
  if (table === null || line === undefined || degF === null || massLb === null)
    return claimedOf('oven', stages, false, 'the oven is in no table');
  const asks = massLb < table.heavy_from_lb ? line.light_degF : line.heavy_degF;
  const isMet = line.comparison === 'at_or_below' ? degF <= asks : degF >= asks;
  if (oven === 'pit' && stages.oven?.verdict === 'broken')
    return [{ stage: 'oven', verdict: 'broken', piece: null, words: 'a pit' }];
  return claimedOf('oven', stages, isMet, 'the oven was otherwise');
}
