import type { Entry } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import { applyAmendments } from './amend.ts';
import { type BatchFrame, BatchFrames, type Shared } from './batch-frame.ts';
import type { Batch, Book, Kitchen, Look, Odd } from './book.ts';
import { foldChecks } from './checks.ts';
import { endingsOf, type Written } from './decided.ts';
import { foldDeviations } from './deviations.ts';
import { reheatsOf } from './ends.ts';
import { foldKitchen } from './kitchen.ts';
import { limitsBy, limitsOf } from './limits-of.ts';
import { LocalDays } from './local-days.ts';
import { foldLooks } from './looks.ts';
import { inOrder, ofKind, seenAt } from './order.ts';
import { lastGoodLook, pieceOf, watchPieceOf } from './pieces.ts';
import { foldOff, foldRounds } from './places.ts';
import { foldSteps } from './runs.ts';
import { Standings } from './standings.ts';
import { unknownLimits, unknownNames } from './unknown.ts';

/**
 * `asOf`: entries observed later are not seen. `knownUntil`: corrections, checks of thermometers, decisions,
 * corrective actions and signatures observed until then still count (missing = all that are given), so that a day
 * is judged as of its own end with everything that became known of it. `limits`: id of another profile than the
 * kitchen's own, for a trial reading.
 */
export type FoldOptions = { asOf: number; knownUntil?: number; limits?: string };

const byKey = <T>(things: readonly T[], key: (thing: T) => string | null): Map<string, T[]> => {
  const map = new Map<string, T[]>();
  for (const thing of things) {
    const id = key(thing);
    if (id === null) continue;
    const list = map.get(id);
    if (list) list.push(thing);
    else map.set(id, [thing]);
  }
  return map;
};

/** A deviation that was written down later still speaks of what was seen by then, when its reading was. */
function foundBy(asOf: number, seen: ReadonlyMap<string, Entry>) {
  return ({ at, body }: Written['deviations'][number]): boolean =>
    msOf(at) <= asOf || (body.found !== null && seen.has(body.found));
}

function batchOf(frame: BatchFrame, standings: Standings): Batch {
  const { body } = frame;
  const gone = [...frame.steps.ends.keys()].filter((piece) => !frame.steps.pieces.includes(piece));
  const pieces = [...frame.steps.pieces, ...gone].map((piece) => pieceOf(frame, piece, standings));
  return {
    id: frame.id,
    name: body.name,
    food: frame.food,
    foodId: body.food,
    made: body.made,
    source: body.source,
    note: body.note,
    at: frame.at,
    count: body.pieces,
    pieces,
    runs: frame.runs,
    watchPiece: watchPieceOf(pieces),
    conflicts: frame.conflicts,
    open: pieces.some(({ end }) => end === null),
  };
}

/** Ends of pieces by all steps that are known, also those after the moment of the fold. */
function goneOf(frames: ReadonlyMap<string, BatchFrame>, known: readonly Entry[]) {
  const steps = byKey(ofKind(known, 'step'), ({ body }) => body.batch);
  return new Map(
    [...frames.values()].map((frame) => [
      frame.id,
      foldSteps(frame.body.pieces, steps.get(frame.id) ?? []).ends,
    ]),
  );
}

/**
 * Everything that the entries of one site say, as of a moment. Entries come in any order; the same entries give
 * the same book. What does not fit is said in `odd`; nothing is thrown.
 * @param at the moment (ms), or both moments
 */
export function foldBook(entries: readonly Entry[], at: number | FoldOptions): Book {
  const asOf = typeof at === 'number' ? at : at.asOf;
  const { knownUntil: asked = Number.POSITIVE_INFINITY, limits: trial } = typeof at === 'number' ? {} : at;
  const knownUntil = Math.max(asked, asOf);
  const asWritten = inOrder(entries);
  const amended = applyAmendments(asWritten, knownUntil);
  // An amendment may have moved an entry in time.
  const ordered = amended.amendments.size === 0 ? amended.entries : inOrder(amended.entries);
  const known = ordered.filter(seenAt(knownUntil));
  const seen = known.filter(seenAt(asOf));
  const kitchen = foldKitchen(known, asOf);
  const limits = trial === undefined ? limitsOf(kitchen) : limitsBy(kitchen, trial);
  const { profile } = limits;
  const { checks, suspect } = foldChecks(ofKind(known, 'probe_check'), seen, kitchen, profile);
  const looks = foldLooks(seen, kitchen, amended.amendments, suspect);
  const air = byKey(looks, (look) => (look.spot === 'air' ? look.equipment : null));
  const shared: Shared = {
    kitchen,
    profile,
    air,
    asOf,
    days: new LocalDays(kitchen.site?.zone ?? 'UTC'),
    steps: byKey(ofKind(seen, 'step'), ({ body }) => body.batch),
    looks: byKey(looks, (look) => look.batch),
    corrected: (id) => amended.amendments.has(id),
  };
  const { frames } = new BatchFrames(ofKind(seen, 'batch'), shared);
  return assemble({
    asOf,
    written: new Map(asWritten.map((entry) => [entry.id, entry])),
    seen,
    known,
    amended,
    kitchen,
    limits,
    looks,
    air,
    checks,
    suspect,
    frames,
  });
}

type Parts = {
  asOf: number;
  seen: Entry[];
  known: Entry[];
  written: ReadonlyMap<string, Entry>;
  amended: ReturnType<typeof applyAmendments>;
  kitchen: Kitchen;
  limits: Book['limits'];
  looks: Look[];
  air: Map<string, Look[]>;
  checks: Book['checks'];
  suspect: Set<string>;
  frames: ReadonlyMap<string, BatchFrame>;
};

function assemble(parts: Parts): Book {
  const { asOf, seen, known, amended, kitchen, looks, frames } = parts;
  const seenById = new Map(seen.map((entry) => [entry.id, entry]));
  const written: Written = {
    deviations: ofKind(known, 'deviation').filter(foundBy(asOf, seenById)),
    actions: ofKind(known, 'corrective_action'),
    decisions: ofKind(known, 'decision'),
    signatures: ofKind(known, 'signature'),
  };
  const endings = endingsOf(written, kitchen);
  const lookById = new Map(looks.map((look) => [look.id, look]));
  const reheats = new Map(
    [...frames.values()].map((frame) => [
      frame.id,
      reheatsOf(frame, kitchen, (piece, before) => lastGoodLook(frame, piece, before)?.at ?? null),
    ]),
  );
  const { deviations, blocking, odd } = foldDeviations({
    frames,
    kitchen,
    looks: lookById,
    checks: parts.checks.filter((check) => check.at <= asOf),
    written,
    endings,
    gone:
      known.length === seen.length
        ? new Map([...frames].map(([id, frame]) => [id, frame.steps.ends]))
        : goneOf(frames, known),
    reheats,
    asOf,
  });
  const standings = new Standings({ frames, kitchen, blocking, endings, reheats, asOf });
  const { off, odd: oddOff } = foldOff(seen);
  const batches = new Set(frames.keys());
  const all: Odd[] = [
    ...amended.odd,
    ...unknownLimits(seen, parts.limits),
    ...seen.flatMap((entry) => unknownNames(entry, kitchen, batches)),
    ...[...frames.values()].flatMap((frame) => frame.odd),
    ...odd,
    ...oddOff,
  ];
  return {
    asOf,
    kitchen,
    limits: parts.limits,
    batches: new Map([...frames.values()].sort(byAge).map((frame) => [frame.id, batchOf(frame, standings)])),
    deviations,
    air: parts.air,
    looks: lookById,
    rounds: foldRounds(seen),
    checks: parts.checks,
    suspect: parts.suspect,
    off,
    notes: ofKind(seen, 'note'),
    handovers: ofKind(seen, 'handover'),
    signatures: written.signatures,
    amendments: amended.amendments,
    struck: amended.struck,
    entries: parts.written,
    odd: all.sort(
      (a, b) => a.at - b.at || (a.entry < b.entry ? -1 : a.entry > b.entry ? 1 : a.key < b.key ? -1 : 1),
    ),
  };
}

const byAge = (a: BatchFrame, b: BatchFrame): number => a.at - b.at || a.seq - b.seq;
