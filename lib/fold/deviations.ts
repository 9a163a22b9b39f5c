import type { EntryOf } from '#shared/entries/entry.ts';
import { minutesBetween, msOf } from '#shared/time.ts';
import type { BatchFrame } from './batch-frame.ts';
import type { Check, Deviation, DeviationState, JudgedRun, Kitchen, Look, Odd, Piece } from './book.ts';
import { type Ending, speaksOf, unconfirmed, type Written } from './decided.ts';
import { endOf, type KeptReheat } from './ends.ts';
import { answers, ruleOf, sideOf } from './good.ts';
import { descendants } from './lineage.ts';
import { type Opened, openedIn } from './opened.ts';

/** What the deviations of one fold are taken from. */
export type DeviationSources = {
  frames: ReadonlyMap<string, BatchFrame>;
  kitchen: Kitchen;
  looks: ReadonlyMap<string, Look>;
  checks: readonly Check[];
  written: Written;
  endings: readonly Ending[];
  /** Ends of pieces by batch, as far as anyone knows (also after the moment of the fold). */
  gone: ReadonlyMap<string, ReadonlyMap<number | null, NonNullable<Piece['end']>>>;
  reheats: ReadonlyMap<string, KeptReheat[]>;
  asOf: number;
};

/** A deviation with the pieces that it blocks, and from when. */
export type Blocking = { deviation: Deviation; batch: string; pieces: (number | null)[]; from: number };

type Draft = Omit<Deviation, 'ends' | 'state' | 'unconfirmed' | 'actions' | 'decisions' | 'outLongestMin'>;

const blank = {
  aliases: [] as string[],
  entry: null,
  batch: null,
  pieces: null,
  step: null,
  stage: null,
  run: null,
  equipment: null,
  probe: null,
  section: null,
  found: null,
  lastGood: null,
  since: null,
  untilAt: null,
  outShortestMin: 0,
};

function fromJudge(opened: Opened): Draft {
  const { run, frame, piece } = opened;
  return {
    ...blank,
    aliases: [],
    ref: opened.ref,
    opened: 'by_the_judge',
    batch: frame.id,
    pieces: piece === null ? null : [piece],
    step: run.step,
    stage: opened.stage,
    run: run.key,
    equipment: opened.found?.equipment ?? run.equipment,
    section: opened.section,
    foundAt: opened.foundAt,
    found: opened.found,
    lastGood: opened.lastGood,
    since: opened.since,
    untilAt: opened.untilAt,
    outShortestMin: opened.outShortestMin,
  };
}

/** Pieces that a deviation made by hand is about: those it names, else all that its batch has. */
const piecesOf = (body: EntryOf<'deviation'>['body'], frame: BatchFrame | undefined): (number | null)[] =>
  body.pieces ?? frame?.steps.pieces ?? [];

/** The run in which a deviation made by hand was found: that of its reading, else where its pieces were then. */
function runOf(
  entry: EntryOf<'deviation'>,
  foundAt: number,
  frame: BatchFrame | undefined,
): JudgedRun | null {
  if (!frame) return null;
  const { found, step } = entry.body;
  const read =
    found === null ? undefined : frame.runs.find(({ looks }) => looks.some(({ id }) => id === found));
  if (read) return read;
  const pieces = piecesOf(entry.body, frame);
  const there = frame.runs.filter((run) =>
    run.members.some(
      ({ piece, from, until }) =>
        pieces.includes(piece) && from <= foundAt && (until === null || until >= foundAt),
    ),
  );
  return there.find((run) => run.step === step) ?? there.at(-1) ?? null;
}

/** Good looks around the one that was found, of the same place, where the judge opened nothing himself. */
function around(found: Look | null, run: JudgedRun | null, frame: BatchFrame | undefined) {
  const profile = frame?.bench.profile ?? null;
  if (!found || !run || !frame || !profile) return { before: null, after: null };
  if (ruleOf(run.step) !== 'hot_hold') return { before: null, after: reheatedFrom(found, run, frame) };
  const good = (look: Look): boolean =>
    look.piece === found.piece &&
    answers(look, found) &&
    sideOf(look, run.step, run.stages, profile) === 'good';
  return {
    before: run.looks.findLast((look) => look.at < found.at && good(look)) ?? null,
    after: frame.looks.find((look) => look.at > found.at && good(look))?.at ?? null,
  };
}

/** Food that was cooling is out of its clock from the moment at which it goes back to the heat. */
function reheatedFrom(found: Look, run: JudgedRun, frame: BatchFrame): number | null {
  const left = run.members.find(({ piece }) => piece === found.piece)?.until ?? null;
  const next = frame.runs.find(
    ({ step, members }) =>
      step === 'reheat' && members.some(({ piece, from }) => piece === found.piece && from === left),
  );
  return run.step === 'cooling' && next ? left : null;
}

/** The last good look is the worst case; what a person says counts where it is earlier, or where no look was good. */
function worstSince(said: string | null, lastGood: Look | null): number | null {
  if (said === null) return lastGood?.at ?? null;
  return lastGood === null ? msOf(said) : Math.min(msOf(said), lastGood.at);
}

function fromHand(entry: EntryOf<'deviation'>, sources: DeviationSources): Draft {
  const { body } = entry;
  const frame = body.batch === null ? undefined : sources.frames.get(body.batch);
  const found = body.found === null ? null : (sources.looks.get(body.found) ?? null);
  const run = runOf(entry, found?.at ?? msOf(entry.at), frame);
  const near = around(found, run, frame);
  const said = body.last_good === null ? null : (sources.looks.get(body.last_good) ?? null);
  const lastGood = said ?? near.before;
  return {
    ...blank,
    aliases: [],
    ref: entry.id,
    opened: 'by_hand',
    entry,
    batch: body.batch,
    pieces: body.pieces,
    step: body.step ?? run?.step ?? null,
    run: run?.key ?? null,
    equipment: body.equipment,
    probe: body.probe,
    section: body.limit?.section ?? null,
    foundAt: Math.min(found?.at ?? Number.POSITIVE_INFINITY, msOf(entry.at)),
    found,
    lastGood,
    since: worstSince(body.since, lastGood),
    untilAt: near.after,
  };
}

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
function sameFinding(draft: Draft, opened: Opened, endings: readonly Ending[]): boolean {
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
function link(draft: Draft, opened: Opened): Draft {
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

/** Failed checks of one thermometer with no good one between them are one deviation: "probe/<id of the first>". */
function fromChecks(checks: readonly Check[]): { draft: Draft; ids: string[] }[] {
  const open = new Map<string, { draft: Draft; ids: string[] }>();
  const all: { draft: Draft; ids: string[] }[] = [];
  const good = new Map<string, number>();
  for (const check of checks) {
    if (check.verdict === 'kept') {
      open.delete(check.probe);
      good.set(check.probe, check.at);
      continue;
    }
    const known = open.get(check.probe);
    if (known) {
      known.ids.push(check.entry.id);
      continue;
    }
    const draft: Draft = {
      ...blank,
      aliases: [],
      ref: `probe/${check.entry.id}`,
      opened: 'by_the_judge',
      stage: check.entry.body.bath,
      probe: check.probe,
      section: check.section,
      foundAt: check.at,
      since: good.get(check.probe) ?? null,
    };
    const made = { draft, ids: [check.entry.id] };
    open.set(check.probe, made);
    all.push(made);
  }
  return all;
}

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

function finish(
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
            mayReturn,
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
  for (const frame of frames.values()) {
    const releases = (piece: number | null): number[] =>
      endings
        .filter((ending) => ending.end !== 'discarded' && speaksOf(ending, frame.id, piece))
        .map(({ at }) => at);
    for (const opened of openedIn(frame, releases)) {
      const same = [...drafts.values()].find((draft) => sameFinding(draft, opened, endings));
      if (same) drafts.set(same.ref, link(same, opened));
      else {
        judged.push(fromJudge(opened));
        blocks.set(opened.ref, opened.blocks);
      }
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
  const all = [...drafts.values(), ...judged];
  const refs = resolver(all);
  const deviations = all
    .map((draft) => finish(draft, blocks.get(draft.ref) ?? [], refs, sources))
    .sort((a, b) => b.foundAt - a.foundAt || (a.ref < b.ref ? -1 : 1));
  return {
    deviations,
    blocking: deviations.flatMap((deviation) => {
      const frame = deviation.batch === null ? undefined : frames.get(deviation.batch);
      if (!frame) return [];
      const pieces = deviation.pieces ?? blocks.get(deviation.ref) ?? frame.steps.pieces;
      return [{ deviation, batch: frame.id, pieces, from: deviation.foundAt }];
    }),
    odd: unknownRefs(refs, written),
  };
}
