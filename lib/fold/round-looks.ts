import { line } from '#lib/judge/compare.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Body } from '#shared/entries/entry.ts';
import type { Spot } from '#shared/entries/step-name.ts';
import { blockedIn, initialsOf, presentIn, profileOf, runsNow } from './ask.ts';
import type { Batch, Book, JudgedRun, Look } from './book.ts';
import { worstIsWarm, worstLook } from './pieces.ts';
import { planOf } from './plan-of.ts';
import { askedOf, asksAir, keysFor } from './spots.ts';
import type { RoundLook } from './views.ts';

const sameLook = 5 * 60_000; // a look takes its readings one after the other (docs/judge.md, section 2)

/** The figures of the last look among some readings, with who made it. */
function lastOf(book: Book, looks: readonly Look[]): RoundLook['last'] {
  const last = looks.at(-1);
  if (!last) return null;
  const together = looks.filter(({ at }) => last.at - at <= sameLook);
  return {
    at: last.at,
    by: initialsOf(book, last.by),
    figures: together.map(({ spot, typed, unit }) => ({ spot, typed, unit })),
  };
}

/** The figure that the key's value is held against on the spot; the judge judges it afterwards. */
function limitOf(run: JudgedRun, profile: Profile | null): RoundLook['limit'] {
  const judged =
    stageEntries(run.stages).find(([, { open, limit }]) => open && limit !== null) ??
    stageEntries(run.stages).find(([, { limit }]) => limit !== null);
  const stage = run.stages.at_readings ?? run.stages.temperature ?? judged?.[1];
  const cold = run.step === 'cold_hold' ? profile?.figures.cold_hold : null;
  const limit = cold ? line(cold).limit : stage?.limit;
  const section = cold ? cold.section : stage?.section;
  if (!limit || section === undefined) return null;
  const comparison =
    limit.comparison === 'at_or_above' || limit.comparison === 'above' ? 'at_or_above' : 'at_or_below';
  return { value: limit.value, unit: limit.unit, comparison, section };
}

/** Seconds that the reheat's route demands, asked in one tap; null where none are. */
function heldAsked(run: JudgedRun, profile: Profile | null): number | null {
  if (run.step !== 'reheat' || !profile) return null;
  const { reheat_conventional, reheat_microwave, reheat_commercial } = profile.figures;
  const section = run.stages.temperature?.section;
  const route = [reheat_conventional, reheat_microwave, reheat_commercial].find(
    (one) => one?.target.section === section,
  );
  return route && route.held_s > 0 ? route.held_s : null;
}

/** Pieces that a round looks at, in order: the one that is watched, or all. */
function piecesAsked(run: JudgedRun, plan: Body<'plan'> | null): (number | null)[] {
  const present = presentIn(run).map(({ piece }) => piece);
  if (plan?.looks !== 'watch_piece' || present.length <= 1) return present;
  return [watchedIn(run) ?? present[0] ?? null];
}

/** The worst of a group by the last look at each piece: the coldest, or the warmest of what cools. */
export function watchedIn(run: JudgedRun): number | null {
  const last = presentIn(run).flatMap(
    ({ piece }) => [...run.before, ...run.looks].findLast((look) => look.piece === piece) ?? [],
  );
  return worstLook(last, run.step)?.piece ?? null;
}

type Row = { equipment: string; equipmentName: string };

function foodLooks(book: Book, row: Row, run: JudgedRun, batch: Batch, round: string | null): RoundLook[] {
  const plan = planOf(book.kitchen, run.step, run.equipment);
  const keys = keysFor(run.step, batch.food?.counted ?? null);
  if (keys.length === 0 || run.step === 'cook') return [];
  const profile = profileOf(book);
  const blocked = blockedIn(book, run);
  const common = {
    ...row,
    batch: batch.id,
    batchName: batch.name,
    food: batch.food?.name ?? null,
    step: run.step,
  };
  return piecesAsked(run, plan).flatMap((piece, place): RoundLook[] => {
    const own = [...run.before, ...run.looks].filter((look) => look.piece === piece);
    const done = readIn(round, run.looks, piece);
    const wanted = askedOf(keys, plan, place);
    const asked = wanted.filter((spot) => !done.has(spot));
    if (asked.length === 0) return [];
    return [
      {
        ...common,
        piece,
        pieceOf: batch.count,
        spots: keys,
        asked,
        last: lastOf(book, own),
        limit: limitOf(run, profile),
        asksHeld: heldAsked(run, profile),
        blocked: blocked.includes(piece),
      },
    ];
  });
}

/** Spots of a piece (or of the air) that were read in this round already. */
const readIn = (round: string | null, looks: readonly Look[], piece: number | null): Set<Spot | null> =>
  new Set(
    round === null
      ? []
      : looks.filter((look) => look.round === round && look.piece === piece).map(({ spot }) => spot),
  );

function airLook(book: Book, row: Row, round: string | null): RoundLook[] {
  const air = book.air.get(row.equipment) ?? [];
  if (round !== null && air.some((look) => look.round === round)) return [];
  return [
    {
      ...row,
      batch: null,
      batchName: null,
      food: null,
      step: null,
      piece: null,
      pieceOf: null,
      spots: ['air'],
      asked: ['air'],
      last: lastOf(book, air),
      limit: null,
      asksHeld: null,
      blocked: false,
    },
  ];
}

/** Worst first within one place, so that what is blocked or close is read while the door is open. */
const worstFirst = (run: JudgedRun): number => {
  const look = worstLook(run.looks, run.step);
  return look ? (worstIsWarm(run.step) ? -look.value : look.value) : 0;
};

/**
 * Every figure that the plan asks of what is in the kitchen now, in the order of the walk; empty equipment is left
 * out, and what was read in this round already is not asked again.
 * @param round id of the round that is being walked; null = a new one
 */
export function roundLooks(book: Book, round: string | null): RoundLook[] {
  const here = Map.groupBy(
    runsNow(book).filter(({ equipment }) => equipment !== null),
    ({ equipment }) => equipment ?? '',
  );
  const walk = [...book.kitchen.equipment.keys(), ...here.keys()];
  return [...new Set(walk)].flatMap((equipment) => {
    const runs = (here.get(equipment) ?? []).toSorted((a, b) => worstFirst(a) - worstFirst(b));
    if (runs.length === 0) return [];
    const row = { equipment, equipmentName: book.kitchen.equipment.get(equipment)?.name ?? equipment };
    const plans = runs.map((run) => planOf(book.kitchen, run.step, run.equipment));
    const air = asksAir(book.kitchen, equipment, plans) ? airLook(book, row, round) : [];
    const food = runs.flatMap((run) => {
      const batch = book.batches.get(run.batch);
      return batch ? foodLooks(book, row, run, batch, round) : [];
    });
    return [...air, ...food];
  });
}
