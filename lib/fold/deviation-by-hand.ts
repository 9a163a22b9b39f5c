import type { EntryOf } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import type { BatchFrame } from './batch-frame.ts';
import type { JudgedRun, Look } from './book.ts';
import { blank, type DeviationSources, type Draft } from './deviation-draft.ts';
import { answers, sideOf } from './good.ts';

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
  if (run.stages.at_readings === undefined) return { before: null, after: reheatedFrom(found, run, frame) };
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

/** A deviation that a person opened, with the looks around what was found. */
export function fromHand(entry: EntryOf<'deviation'>, sources: DeviationSources): Draft {
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
