import { msOf } from '#shared/time.ts';
import type { Deviation, Odd } from './book.ts';
import { speaksOf, type Written } from './decided.ts';
import { fromHand } from './deviation-by-hand.ts';
import { type Blocking, type DeviationSources, type Draft, fromJudge } from './deviation-draft.ts';
import { link, sameFinding } from './deviation-link.ts';
import { fromChecks } from './deviation-of-probe.ts';
import { finish } from './deviation-state.ts';
import { openedIn } from './opened.ts';
import { PastDates } from './past-dates.ts';

/** A ref as people wrote it → the deviation. A judge's key whose deciding reading has moved still leads to it. */
function resolver(drafts: readonly Draft[]): (ref: string) => Draft | undefined {
  const exact = new Map(
    drafts.flatMap((draft) => [draft.ref, ...draft.aliases].map((ref) => [ref, draft] as const)),
  );
  const stem = (ref: string): string => ref.split('/').slice(0, 4).join('/');
  const byStem = new Map(
    drafts.flatMap((draft) =>
      [draft.ref, ...draft.aliases]
        .filter((ref) => ref.split('/').length === 5)
        .map((ref) => [stem(ref), draft]),
    ),
  );
  return (ref) => exact.get(ref) ?? (ref.split('/').length === 5 ? byStem.get(stem(ref)) : undefined);
}

function unknownRefs(refs: (ref: string) => Draft | undefined, written: Written): Odd[] {
  return [...written.actions, ...written.decisions]
    .filter(({ body }) => !refs(body.deviation))
    .map(({ id, at, body }) => ({
      entry: id,
      at: msOf(at),
      key: 'deviation_unknown',
      values: { deviation: body.deviation },
    }));
}

/**
 * Every deviation: what the judge opens and what people opened, the same finding once. Newest first.
 * `blocking` says which pieces each of them blocks, and from when.
 */
export function foldDeviations(sources: DeviationSources): {
  deviations: Deviation[];
  blocking: Blocking[];
  odd: Odd[];
} {
  const { frames, written, endings } = sources;
  const hand = written.deviations.map((entry) => fromHand(entry, sources));
  const blocks = new Map<string, (number | null)[]>();
  const judged: Draft[] = [];
  const drafts = new Map(hand.map((draft) => [draft.ref, draft]));
  const past = new PastDates(frames);
  for (const frame of frames.values()) {
    const releases = (piece: number | null): number[] =>
      endings
        .filter((ending) => ending.end !== 'discarded' && speaksOf(ending, frame.id, piece))
        .map(({ at }) => at);
    for (const opened of openedIn(frame, releases)) {
      const same = [...drafts.values()].find((draft) => sameFinding(draft, opened, endings));
      const parent = past.sharedBy(opened);
      if (same) drafts.set(same.ref, link(same, opened));
      else if (parent === null) {
        judged.push(fromJudge(opened));
        blocks.set(opened.ref, opened.blocks);
      }
      past.note(opened, same?.ref ?? parent ?? opened.ref);
    }
  }
  for (const { draft, ids } of fromChecks(sources.checks)) {
    const same = [...drafts.values()].find(
      ({ entry, probe }) =>
        probe === draft.probe &&
        entry !== null &&
        (entry.body.found === null || ids.includes(entry.body.found)),
    );
    if (!same) judged.push(draft);
    else
      drafts.set(same.ref, {
        ...same,
        aliases: [...same.aliases, draft.ref],
        stage: draft.stage,
        section: same.section ?? draft.section,
        foundAt: Math.min(same.foundAt, draft.foundAt),
        since: draft.since,
      });
  }
  const all = past.led([...drafts.values(), ...judged]);
  const refs = resolver(all);
  const deviations = all
    .map((draft) => finish(draft, blocks.get(draft.ref) ?? [], refs, sources))
    .sort((a, b) => b.foundAt - a.foundAt || (a.ref < b.ref ? -1 : 1));
  const own = deviations.flatMap((deviation): Blocking[] => {
    const frame = deviation.batch === null ? undefined : frames.get(deviation.batch);
    if (!frame) return [];
    const pieces = deviation.pieces ?? blocks.get(deviation.ref) ?? frame.steps.pieces;
    return [{ deviation, batch: frame.id, pieces, from: deviation.foundAt }];
  });
  return {
    deviations,
    blocking: [...own, ...past.blocked(deviations)],
    odd: unknownRefs(refs, written),
  };
}
