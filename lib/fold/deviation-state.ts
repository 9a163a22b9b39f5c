import type { EntryOf } from '#shared/entries/entry.ts';
import { minutesBetween, msOf } from '#shared/time.ts';
import type { Deviation, DeviationState } from './book.ts';
import { unconfirmed } from './decided.ts';
import type { DeviationSources, Draft } from './deviation-draft.ts';
import { endOf } from './ends.ts';
import { descendants } from './lineage.ts';

type Named = { batch: string; piece: number | null };

/** Every piece that must have an end: the deviation's own, and what was made of them since. */
function concerned(draft: Draft, sources: DeviationSources, blocks: readonly (number | null)[]): Named[] {
  const frame = draft.batch === null ? undefined : sources.frames.get(draft.batch);
  if (!frame) return [];
  const own = draft.pieces ?? (blocks.length > 0 ? blocks : frame.steps.pieces);
  const made = new Map(
    own
      .flatMap((piece) => descendants(frame.id, piece, draft.foundAt, sources.frames))
      .map((one) => [one.id, one]),
  );
  return [
    ...own.map((piece) => ({ batch: frame.id, piece })),
    ...[...made.values()].flatMap((one) => one.steps.pieces.map((piece) => ({ batch: one.id, piece }))),
  ];
}

const mendsThings = new Set(['take_out_of_service', 'repair', 'move', 'evaluate', 'other', 'discard']);
const decidesFood = new Set(['discard', 'reheat', 'reheat_done', 'recook', 'move', 'evaluate', 'other']);

/** About a thermometer or a cabinet only: it ends with what was done about the thing. */
function endOfThing(actions: readonly EntryOf<'corrective_action'>[]): Deviation['ends'] {
  const mended = actions.find(({ body }) => mendsThings.has(body.action));
  return [
    {
      batch: null,
      piece: null,
      end: mended ? 'no_food' : null,
      at: mended ? msOf(mended.at) : null,
      by: mended ? mended.body.decided_by : null,
    },
  ];
}

function stateOf(ends: Deviation['ends'], decided: boolean): DeviationState {
  if (ends.every(({ end }) => end !== null)) return 'closed';
  return decided ? 'decided' : 'open';
}

/** The deviation with what people wrote about it: actions, decisions, an end for each piece, its state. */
export function finish(
  draft: Draft,
  blocks: readonly (number | null)[],
  refs: (ref: string) => Draft | undefined,
  sources: DeviationSources,
): Deviation {
  const { written, endings, kitchen, asOf } = sources;
  const actions = written.actions.filter(({ body }) => refs(body.deviation) === draft);
  const decisions = written.decisions.filter(({ body }) => refs(body.deviation) === draft);
  const mayReturn = kitchen.site?.house.reheat_may_return ?? false;
  const ends =
    draft.batch === null
      ? endOfThing(actions)
      : concerned(draft, sources, blocks).map(({ batch, piece }) => ({
          batch: batch === draft.batch ? null : batch,
          piece,
          ...endOf(
            batch,
            piece,
            draft.foundAt,
            endings,
            sources.gone.get(batch),
            sources.reheats.get(batch) ?? [],
            mayReturn && draft.stage !== 'date_mark',
          ),
        }));
  const discarded = ends.every(({ end }) => end === 'discarded' || end === 'gone')
    ? Math.max(...ends.map(({ at }) => at ?? asOf), draft.foundAt)
    : null;
  const untilAt =
    draft.untilAt !== null && discarded !== null
      ? Math.min(draft.untilAt, discarded)
      : (draft.untilAt ?? (discarded !== null && Number.isFinite(discarded) ? discarded : null));
  const decided =
    actions.some(({ body }) => decidesFood.has(body.action)) ||
    decisions.some(({ body }) => body.decision !== 'confirm');
  return {
    ...draft,
    untilAt,
    outLongestMin: draft.since === null ? null : Math.max(0, minutesBetween(draft.since, untilAt ?? asOf)),
    actions,
    decisions,
    ends,
    unconfirmed: unconfirmed([draft.ref, ...draft.aliases], [...actions, ...decisions], written),
    state: stateOf(ends, decided),
  };
}
