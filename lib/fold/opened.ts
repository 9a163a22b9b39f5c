import type { Stage, StageName } from '#lib/judge/answer.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import { minutesBetween } from '#shared/time.ts';
import type { BatchFrame } from './batch-frame.ts';
import type { JudgedRun, Look, Member } from './book.ts';
import { answers, sideOf } from './good.ts';
import { judgeMember } from './judge-run.ts';
import { restsOn } from './rests-on.ts';

/** A broken stage of a published rule, for one piece: what the judge opens. */
export type Opened = {
  ref: string;
  frame: BatchFrame;
  run: JudgedRun;
  member: Member;
  piece: number | null;
  /** The pieces that it blocks: the piece itself, or all of the group where the look named none. */
  blocks: (number | null)[];
  stage: StageName;
  section: string;
  /** Part of the stay that was judged: from its start, or from the decision that released the piece before. */
  from: number;
  to: number; // the next release, or for ever
  foundAt: number;
  found: Look | null;
  lastGood: Look | null;
  since: number | null;
  untilAt: number | null;
  outShortestMin: number;
};

/** Stages that open nothing: about witness, or about the house's own plan. */
const opensNothing: ReadonlySet<StageName> = new Set(['between_readings', 'house_plan_interval']);

/** Key of a deviation that the judge opened (shared/entries/deviation.ts). */
export const keyOf = (
  batch: string,
  piece: number | null,
  step: string,
  stage: string,
  entry: string,
): string => `${batch}/${piece ?? '-'}/${step}/${stage}/${entry}`;

type Stay = { frame: BatchFrame; run: JudgedRun; member: Member; from: number; to: number };

const ofPiece = (looks: readonly Look[], piece: number | null): Look[] =>
  looks.filter((look) => look.piece === piece);

/** The first moment at which a stage was shown broken. A verdict never turns back, so halving finds it. */
function firstShown(stay: Stay, name: StageName): number {
  const { frame, run, member, from } = stay;
  const moments = ofPiece(run.looks, member.piece)
    .map(({ at }) => at)
    .filter((at) => at >= from);
  if (member.until !== null) moments.push(member.until);
  const last = frame.bench.asOf;
  let low = 0;
  let high = moments.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const stages = judgeMember(run, member, frame.bench, moments[middle] ?? last, from);
    if (stages[name]?.verdict === 'broken') high = middle;
    else low = middle + 1;
  }
  return moments[low] ?? last;
}

/** The look that showed it: of those on which the verdict rested then, the first at that moment. */
function decisive(stay: Stay, name: StageName, foundAt: number): Look | null {
  const { frame, run, member, from } = stay;
  const stage = judgeMember(run, member, frame.bench, foundAt, from)[name];
  const rests = stage ? restsOn(run, stage) : [];
  const at = (looks: readonly Look[]): Look | undefined => looks.find((look) => look.at === foundAt);
  return at(rests) ?? at(ofPiece(run.looks, member.piece)) ?? rests.at(-1) ?? null;
}

/** Held food: from the last good look of the same spot (or the coldest) to the first one after it. */
function heldBounds(stay: Stay, stage: Stage, found: Look | null, foundAt: number) {
  const { frame, run, member, from } = stay;
  const { profile } = frame.bench;
  const good = (look: Look): boolean =>
    profile !== null &&
    found !== null &&
    answers(look, found) &&
    sideOf(look, run.step, { at_readings: stage }, profile) === 'good';
  const own = ofPiece(run.looks, member.piece).filter((look) => look.at >= from);
  const lastGood = own.findLast((look) => look.at < foundAt && good(look)) ?? null;
  const later = ofPiece(frame.looks, member.piece).filter(({ spot, at }) => spot !== 'air' && at > foundAt);
  const right = later.find(good)?.at ?? null;
  const bad = own.filter((look) => look.at >= foundAt && (right === null || look.at < right) && !good(look));
  return {
    lastGood,
    since: lastGood?.at ?? Math.max(member.from, from),
    right,
    shortest: minutesBetween(foundAt, bad.at(-1)?.at ?? foundAt),
  };
}

/** Clocks: out of control from the moment at which the limit was over, counted from the earliest start. */
function clockBounds(stay: Stay, stage: Stage, foundAt: number) {
  const { run, member } = stay;
  const start = stage.deadline === null ? null : stage.deadline - (stage.limit_min ?? 0) * 60_000;
  const own = [...run.before, ...run.looks].filter((look) => look.piece === member.piece);
  return {
    lastGood: start === null ? null : (own.findLast(({ at }) => at === start) ?? null),
    since: stage.deadline,
    right: null,
    shortest: Math.max(0, (stage.shortest_min ?? 0) - (stage.limit_min ?? 0)),
    foundAt,
  };
}

function boundsOf(stay: Stay, name: StageName, stage: Stage, found: Look | null, foundAt: number) {
  if (name === 'at_readings') return heldBounds(stay, stage, found, foundAt);
  if (name === 'date_mark') return { lastGood: null, since: foundAt, right: null, shortest: 0 };
  if (stage.limit_min !== null) return clockBounds(stay, stage, foundAt);
  return { lastGood: null, since: stay.member.until, right: null, shortest: 0 };
}

/** When food that was out of its rule left it: gone, or into the next step that puts it right. No step makes it younger. */
function leftAt({ frame, member }: Stay, name: StageName, foundAt: number): number | null {
  const gone = frame.steps.ends.get(member.piece)?.at ?? null;
  if (name === 'date_mark') return gone;
  const left = member.until !== null && member.until >= foundAt ? member.until : null;
  const next = frame.runs.find((run) =>
    run.members.some((other) => other.piece === member.piece && other.from === left),
  );
  const put = next && (next.step === 'reheat' || next.step === 'cold_hold') ? left : null;
  return gone === null || put === null ? (gone ?? put) : Math.min(gone, put);
}

const earlier = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? (a ?? b) : Math.min(a, b);

function blocked({ frame, run, member }: Stay): (number | null)[] {
  if (member.piece !== null && frame.steps.pieces.includes(member.piece)) return [member.piece];
  const numbers = run.members.map(({ piece }) => piece).filter((piece) => piece !== null);
  return numbers.length > 0 ? numbers : frame.steps.pieces;
}

function openedBy(stay: Stay, name: StageName, stage: Stage): Opened {
  const { frame, run, member, from, to } = stay;
  const foundAt = stage.first_bad ?? firstShown(stay, name);
  const found = decisive(stay, name, foundAt);
  const { lastGood, since, right, shortest } = boundsOf(stay, name, stage, found, foundAt);
  const gone =
    name === 'at_readings' ? (frame.steps.ends.get(member.piece)?.at ?? null) : leftAt(stay, name, foundAt);
  return {
    ref: keyOf(frame.id, member.piece, member.entry, name, found?.id ?? member.entry),
    frame,
    run,
    member,
    piece: member.piece,
    blocks: blocked(stay),
    stage: name,
    section: stage.section,
    from,
    to,
    foundAt,
    found,
    lastGood,
    since,
    untilAt: earlier(right, gone === null ? null : Math.max(gone, foundAt)),
    outShortestMin: shortest,
  };
}

/** The stays of a run as the judge sees them: one for each piece, and one for looks that name none of them. */
function staysOf(run: JudgedRun): Member[] {
  const first = run.members[0];
  return run.byPiece.flatMap(({ piece }) => {
    const own = run.members.find((member) => member.piece === piece);
    if (own) return [own];
    return first ? [{ ...first, piece, from: run.start, until: run.end }] : [];
  });
}

/**
 * Every deviation that the judge opens in a batch. A piece that was released by a decision and is found out of
 * its rule again in the same step is a new deviation.
 * @param releases moments at which a decision released a piece (in order)
 */
export function openedIn(frame: BatchFrame, releases: (piece: number | null) => number[]): Opened[] {
  const opened: Opened[] = [];
  const past = new Set<number | null>(); // pieces past their date: moved to another cooler they are not found again
  for (const run of frame.runs) {
    for (const member of staysOf(run)) {
      const stages = run.byPiece.find(({ piece }) => piece === member.piece)?.stages ?? {};
      for (const [name, stage] of stageEntries(stages)) {
        if (opensNothing.has(name) || stage.verdict !== 'broken') continue;
        if (name === 'date_mark') {
          if (past.has(member.piece)) continue;
          past.add(member.piece);
        }
        opened.push(
          ...inParts(
            { frame, run, member, from: member.from, to: Number.POSITIVE_INFINITY },
            name,
            stage,
            releases,
          ),
        );
      }
    }
  }
  return opened;
}

/** Parts of one stay between releases; only held food can leave its rule a second time within one step. */
function inParts(
  stay: Stay,
  name: StageName,
  stage: Stage,
  releases: (piece: number | null) => number[],
): Opened[] {
  const first = openedBy(stay, name, stage);
  if (name !== 'at_readings') return [first];
  const release = releases(stay.member.piece).find((at) => at >= first.foundAt);
  if (release === undefined) return [first];
  // Looks at the very moment of the decision were seen by the one who decided.
  const rest: Stay = { ...stay, from: release + 1 };
  const again = judgeMember(stay.run, stay.member, stay.frame.bench, stay.frame.bench.asOf, rest.from)[name];
  const more = again?.verdict === 'broken' ? inParts(rest, name, again, releases) : [];
  return [{ ...first, to: release }, ...more];
}
