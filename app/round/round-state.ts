import type { RoundLook } from '#lib/fold/views.ts';
import type { Spot, StepName } from '#shared/entries/step-name.ts';
import type { Unit } from '#shared/units.ts';
import type { OddFigure } from './plausible.ts';

/** What the round knows before its first key: plain data from the server, nothing to compute from the book. */
export type RoundPlanned = {
  round: string | null; // a round that was started and goes on; null = none yet
  startedAt: number | null;
  plannedAt: number | null;
  looks: WalkLook[]; // in the order of the walk
  done: { key: string; spot: Spot | null }[]; // read in this round already, by the book
  groups: PieceGroup[]; // every piece that stands anywhere, for "read every piece"
  probes: ProbeChoice[];
  unit: Unit; // the site's, where no thermometer is chosen
  oddAbove: number | null; // in the site's unit
  jump: Record<Unit, number>; // the judge's implausible jump
  lateAfterMin: number;
  aheadMin: number; // a reading further ahead of the book's clock is asked about
};

/** One look of the walk. `limits` holds the published figure in both units: 135 °F and 57 °C are no conversion. */
export type WalkLook = RoundLook & {
  limits: Record<Unit, number> | null;
  counted: 'pieces' | 'pans';
};

export type PieceGroup = { equipment: string; batch: string; pieces: number[] };

/** `correction`: degrees that its last adjustment adds to what it shows; missing or null = none. */
export type ProbeChoice = { id: string; unit: Unit; correction?: number | null };

/** One figure that this round wrote. */
export type Saved = {
  id: string; // of the reading's draft
  key: string;
  spot: Spot | null;
  typed: string;
  unit: Unit;
  at: number;
  by: string;
  under: boolean;
};

export type Question =
  | ({ about: 'figure' } & OddFigure)
  | { about: 'clock'; bookAt: number; phoneAt: number; ahead: boolean }
  | { about: 'future'; at: number; bookAt: number };

export type Face =
  | { kind: 'entry' }
  | { kind: 'question'; ask: Question; spot: Spot }
  | { kind: 'held'; spot: Spot; seconds: number }
  | { kind: 'stop'; saved: Saved }
  | { kind: 'could_not' }
  | { kind: 'hands' }
  | { kind: 'probes' }
  | { kind: 'when' }
  | { kind: 'walk' }
  | { kind: 'summary' };

export type RoundState = {
  planned: RoundPlanned;
  looks: WalkLook[];
  current: number;
  typed: string;
  minutesAgo: number;
  exactAt: number | null; // an earlier look by its exact time (from paper)
  lateReason: string | null;
  hand: string | null;
  probe: string | null;
  saved: Saved[];
  skipped: string[]; // keys of looks that could not be made
  round: string | null;
  startedAt: number | null;
  ended: boolean;
  stopped: string[]; // equipment whose stop list was shown: said once, then every piece is read
  trustBook: boolean; // the phone's clock was found wrong: times come from the book's
  trustPhone: boolean;
  problem: 'no_figure' | null;
  face: Face;
};

/** Equipment, batch and piece of a look, in one word. */
export const keyOf = (look: Pick<RoundLook, 'equipment' | 'batch' | 'piece'>): string =>
  `${look.equipment}/${look.batch ?? 'air'}/${look.piece ?? '-'}`;

/** The round as it opens: at the first look that is not made yet. */
export function opened(planned: RoundPlanned, hand: string | null, probe: string | null): RoundState {
  const known = planned.probes.some((p) => p.id === probe);
  const state: RoundState = {
    planned,
    looks: planned.looks,
    current: 0,
    typed: '',
    minutesAgo: 0,
    exactAt: null,
    lateReason: null,
    hand,
    probe: known ? probe : null,
    saved: [],
    skipped: [],
    round: planned.round,
    startedAt: planned.startedAt,
    ended: false,
    stopped: [],
    trustBook: false,
    trustPhone: false,
    problem: null,
    face: { kind: 'entry' },
  };
  return goOn({ ...state, current: -1 });
}

/** Spots of a look that are in the book or on this phone. */
export function spotsSaved(state: RoundState, look: WalkLook): (Spot | null)[] {
  const key = keyOf(look);
  return [
    ...state.planned.done.filter((d) => d.key === key).map((d) => d.spot),
    ...state.saved.filter((s) => s.key === key).map((s) => s.spot),
  ];
}

/** none, half (one end of two is read) or all of what the plan asks of this look. */
export function progress(state: RoundState, look: WalkLook): 'none' | 'half' | 'all' {
  const saved = spotsSaved(state, look);
  if (saved.length === 0) return 'none';
  return look.asked.every((spot) => saved.includes(spot)) ? 'all' : 'half';
}

/** How many figures this round asks, and how many of them are written: the same count that the kitchen announces. */
export function figuresOf(state: RoundState): { done: number; total: number } {
  const name = (key: string, spot: Spot | null): string => `${key} ${spot}`;
  const asked = new Set(
    state.looks.flatMap((look) => look.asked.map((spot: Spot | null) => name(keyOf(look), spot))),
  );
  const written = new Set([...state.planned.done, ...state.saved].map(({ key, spot }) => name(key, spot)));
  const before = new Set(state.planned.done.map(({ key, spot }) => name(key, spot)));
  const earlier = [...before].filter((figure) => !asked.has(figure)).length;
  const now = [...asked].filter((figure) => written.has(figure)).length;
  return { done: earlier + now, total: earlier + asked.size };
}

/** Looks that still have to be made: not complete, and not said to be impossible. */
export const toMake = (state: RoundState): WalkLook[] =>
  state.looks.filter((look) => progress(state, look) !== 'all' && !state.skipped.includes(keyOf(look)));

/**
 * On to the next look that has to be made: first all of this place, while its door is open, then on in the walk,
 * round the corner if need be; else to the summary.
 */
export function goOn(state: RoundState): RoundState {
  const open = toMake(state);
  const here = open.filter((look) => look.equipment === state.looks[state.current]?.equipment);
  const isLater = (look: WalkLook): boolean => state.looks.indexOf(look) > state.current;
  const next = here.find(isLater) ?? here[0] ?? open.find(isLater) ?? open[0];
  if (next === undefined) return { ...state, current: Math.max(0, state.current), face: { kind: 'summary' } };
  return { ...state, current: state.looks.indexOf(next), face: { kind: 'entry' } };
}

/** Unit of the figure being typed: that of the thermometer in use, else the site's. */
export const unitInUse = (state: RoundState): Unit =>
  state.planned.probes.find((p) => p.id === state.probe)?.unit ?? state.planned.unit;

/** What the last adjustment of the thermometer in use adds to a figure; null = nothing. */
export const correctionInUse = (state: RoundState): number | null =>
  state.planned.probes.find((p) => p.id === state.probe)?.correction ?? null;

const held: readonly StepName[] = ['hot_hold', 'rest', 'service', 'transport', 'cold_hold'];

/** In these steps a figure on the wrong side of the limit stops the food; in a cooling or reheat it is on its way. */
export const isHeld = (step: StepName | null): boolean => step !== null && held.includes(step);

/** Whether a figure of this look is on the wrong side of its limit. Air and food on its way never are. */
export function isUnder(look: WalkLook, spot: Spot, value: number, unit: Unit): boolean {
  if (look.limit === null || look.limits === null || spot === 'air' || !isHeld(look.step)) return false;
  const limit = look.limits[unit];
  return look.limit.comparison === 'at_or_above' ? value < limit : value > limit;
}
