import { type Ending, speaksOf } from './decided.ts';
import type { Draft } from './deviation-draft.ts';
import type { Opened } from './opened.ts';

/** Decided and let go before the judge found it: what is found after that is another deviation. */
const wasOver = (draft: Draft, opened: Opened, endings: readonly Ending[]): boolean =>
  endings.some(
    (ending) =>
      ending.end !== 'discarded' &&
      ending.at >= draft.foundAt &&
      ending.at < opened.foundAt &&
      speaksOf(ending, opened.frame.id, opened.piece),
  );

/** Whether a person's deviation and the judge's are about the same food and the same finding. */
export function sameFinding(draft: Draft, opened: Opened, endings: readonly Ending[]): boolean {
  if (draft.batch !== opened.frame.id || wasOver(draft, opened, endings)) return false;
  const pieces = draft.pieces;
  if (pieces !== null && !opened.blocks.some((piece) => piece !== null && pieces.includes(piece)))
    return false;
  if (draft.found !== null && draft.found.id === opened.found?.id) return true;
  return draft.run === opened.run.key && draft.foundAt >= opened.from && draft.foundAt <= opened.to;
}

const ofBoth =
  (pick: (a: number, b: number) => number) =>
  (a: number | null, b: number | null): number | null =>
    a === null || b === null ? null : pick(a, b);
const earliest = ofBoth(Math.min);
const latest = ofBoth(Math.max);

/** The judge's record laid into the person's: its key leads here, and the worse of both answers stands. */
export function link(draft: Draft, opened: Opened): Draft {
  const first = draft.aliases.length === 0;
  return {
    ...draft,
    aliases: [...draft.aliases, opened.ref],
    stage: draft.stage ?? opened.stage,
    section: first ? opened.section : draft.section,
    equipment: draft.equipment ?? opened.found?.equipment ?? null,
    found: draft.found ?? opened.found,
    foundAt: Math.min(draft.foundAt, opened.foundAt),
    lastGood: first ? opened.lastGood : draft.lastGood,
    since: first ? opened.since : earliest(draft.since, opened.since),
    untilAt: first ? opened.untilAt : latest(draft.untilAt, opened.untilAt),
    outShortestMin: Math.max(draft.outShortestMin, opened.outShortestMin),
  };
}
