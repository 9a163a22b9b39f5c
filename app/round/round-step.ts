import type { Body, Draft } from '#shared/entries/entry.ts';
import type { Spot } from '#shared/entries/step-name.ts';
import { noteDraft, type Pen, readingDraft, roundDraft, struckDraft } from './drafts.ts';
import { oddFigure } from './plausible.ts';
import {
  correctionInUse,
  type Face,
  goOn,
  isHeld,
  isUnder,
  keyOf,
  progress,
  type Question,
  type RoundState,
  type Saved,
  toMake,
  unitInUse,
  type WalkLook,
} from './round-state.ts';
import { asWritten, meant, type PadKey, press } from './typing.ts';

export type CouldNot = NonNullable<Body<'note'>['could_not']>;

/** What a finger does on the round. */
export type Press =
  | { do: 'key'; key: PadKey }
  | { do: 'restore'; typed: string }
  | { do: 'ago'; minutes: number }
  | { do: 'exact'; at: number; reason: string | null }
  | { do: 'save'; spot: Spot }
  | { do: 'held'; spot: Spot; heldS: number | null }
  | { do: 'answer'; typed: string }
  | { do: 'clock'; trust: 'book' | 'phone' }
  | { do: 'again' } // "type it again": nothing has been written
  | { do: 'undo' }
  | { do: 'could_not'; reason: CouldNot | null; text: string }
  | { do: 'unanswered'; text: string } // nobody picked up the telephone
  | { do: 'read_every_piece' }
  | { do: 'show'; face: 'entry' | 'could_not' | 'hands' | 'probes' | 'when' | 'walk' | 'summary' | 'stop' }
  | { do: 'go'; index: number }
  | { do: 'hand'; person: string }
  | { do: 'probe'; probe: string | null }
  | { do: 'end' };

/** What the press needs from outside: the clocks, ids, and whether an entry never left this device. */
export type Around = {
  now: number; // device's clock, ms
  bookAhead: number; // ms to add to the device's clock to get the book's
  id: () => string;
  unsent: (id: string) => boolean;
  lang: 'en' | 'es';
  undoReason: string;
};

/** What follows: the screen's next state, entries to write, entries to drop because they never left this device. */
export type After = { state: RoundState; write: Draft[]; drop: string[] };

const stays = (state: RoundState): After => ({ state, write: [], drop: [] });
const entry: Face = { kind: 'entry' };

/** One press. Pure: the same state, press and surroundings always give the same. */
export function pressed(state: RoundState, what: Press, around: Around): After {
  switch (what.do) {
    case 'key':
      return stays({ ...state, typed: press(state.typed, what.key), problem: null });
    case 'restore':
      return stays({ ...state, typed: what.typed });
    case 'ago':
      return stays({ ...state, minutesAgo: what.minutes, exactAt: null, lateReason: null });
    case 'exact':
      return exactly(state, what.at, what.reason, around);
    case 'save':
      return save(state, { spot: what.spot, figureAsked: false, heldS: undefined }, around);
    case 'held':
      return save(state, { spot: what.spot, figureAsked: true, heldS: what.heldS }, around);
    case 'answer':
      return answered(state, what.typed, around);
    case 'clock':
      return trusted(state, what.trust, around);
    case 'again':
      return stays({ ...state, typed: '', face: entry });
    case 'undo':
      return undone(state, around);
    case 'could_not':
      return couldNot(state, what, around);
    case 'unanswered':
      return unanswered(state, what.text, around);
    case 'read_every_piece':
      return stays(goOn(withEveryPiece(state)));
    case 'show':
      return stays({ ...state, face: shown(state, what.face) });
    case 'go':
      return stays({
        ...state,
        current: what.index,
        skipped: state.skipped.filter((key) => key !== keyAt(state, what.index)),
        face: entry,
      });
    case 'hand':
      return stays({ ...state, hand: what.person, face: entry });
    case 'probe':
      return stays({ ...state, probe: what.probe, face: entry });
    case 'end':
      return ended(state, around);
  }
}

const keyAt = (state: RoundState, index: number): string | null => {
  const look = state.looks[index];
  return look === undefined ? null : keyOf(look);
};

function shown(state: RoundState, face: Extract<Press, { do: 'show' }>['face']): Face {
  if (face !== 'stop') return { kind: face };
  const last = state.saved.findLast((s) => s.under);
  return last === undefined ? entry : { kind: 'stop', saved: last };
}

/** The moment of the look: the device's clock, or the book's where that was chosen, less what the chip says. */
export function lookedAt(state: RoundState, around: Pick<Around, 'now' | 'bookAhead'>): number {
  if (state.exactAt !== null) return state.exactAt;
  return around.now + (state.trustBook ? around.bookAhead : 0) - state.minutesAgo * 60_000;
}

type Saving = { spot: Spot; figureAsked: boolean; heldS: number | null | undefined };

/** Asks what must be asked, in this order: who, with which thermometer, when, can it be, did it stay. Then writes. */
function save(state: RoundState, saving: Saving, around: Around): After {
  const look = state.looks[state.current];
  const value = meant(state.typed);
  if (look === undefined || value === null) return stays({ ...state, problem: 'no_figure', face: entry });
  if (state.hand === null) return stays({ ...state, face: { kind: 'hands' } });
  if (state.probe === null && state.planned.probes.length > 0)
    return stays({ ...state, face: { kind: 'probes' } });
  const ask =
    clockQuestion(state, around) ?? (saving.figureAsked ? null : figureQuestion(state, look, saving));
  if (ask !== null) return stays({ ...state, face: { kind: 'question', ask, spot: saving.spot } });
  if (saving.heldS === undefined && asksHeld(look, value, unitInUse(state)))
    return stays({ ...state, face: { kind: 'held', spot: saving.spot, seconds: look.asksHeld ?? 0 } });
  return written(state, look, { ...saving, value, heldS: saving.heldS ?? null, by: state.hand }, around);
}

/** Seconds count only where the figure is there: below the target nobody needs to be asked. */
function asksHeld(look: WalkLook, value: number, unit: 'degF' | 'degC'): boolean {
  return look.asksHeld !== null && (look.limits === null || value >= look.limits[unit]);
}

function clockQuestion(state: RoundState, around: Around): Question | null {
  const bound = state.planned.aheadMin * 60_000;
  const bookAt = around.now + around.bookAhead;
  if (state.exactAt !== null && state.exactAt > bookAt + bound)
    return { about: 'future', at: state.exactAt, bookAt };
  if (state.exactAt !== null || state.trustBook || state.trustPhone) return null;
  if (Math.abs(around.bookAhead) <= bound) return null;
  return { about: 'clock', bookAt, phoneAt: around.now, ahead: around.bookAhead < 0 };
}

function figureQuestion(state: RoundState, look: WalkLook, { spot }: Saving): Question | null {
  const unit = unitInUse(state);
  const value = meant(state.typed);
  if (value === null) return null;
  const last = look.last?.figures.find((f) => f.spot === spot && f.unit === unit);
  const odd = oddFigure(state.typed, value, {
    unit,
    oddAbove: unit === state.planned.unit && spot !== 'air' ? state.planned.oddAbove : null,
    jump: spot === 'air' ? null : state.planned.jump[unit],
    last: last === undefined ? null : Number(last.typed),
    lastIsNear: isHeld(look.step),
  });
  return odd === null ? null : { about: 'figure', ...odd };
}

type Figure = Saving & { value: number; heldS: number | null; by: string };

function written(state: RoundState, look: WalkLook, figure: Figure, around: Around): After {
  const at = lookedAt(state, around);
  const pen: Pen = { now: around.now, by: figure.by, id: around.id };
  const unit = unitInUse(state);
  const begun = begin(state, pen, at);
  const late = around.now - at > state.planned.lateAfterMin * 60_000;
  const reading = readingDraft(pen, at, {
    batch: look.batch,
    piece: look.piece,
    equipment: look.equipment,
    spot: figure.spot,
    typed: asWritten(state.typed),
    value: figure.value,
    unit,
    probe: state.probe,
    held_s: figure.heldS,
    round: begun.state.round,
    source: 'hand',
    correction: correctionInUse(state),
    late_reason: late ? state.lateReason : null,
  });
  const saved: Saved = {
    id: reading.id,
    key: keyOf(look),
    spot: figure.spot,
    typed: reading.body.typed,
    unit,
    at,
    by: figure.by,
    // The worse of typed and corrected counts, as for the judge.
    under: [0, reading.body.correction ?? 0].some((added) =>
      isUnder(look, figure.spot, figure.value + added, unit),
    ),
  };
  const next = cleared({ ...begun.state, saved: [...begun.state.saved, saved] });
  return { state: moved(next, look, saved), write: [...begun.write, reading], drop: [] };
}

/** After each save the time falls back to now, and the pad is empty. */
const cleared = (state: RoundState): RoundState => ({
  ...state,
  typed: '',
  minutesAgo: 0,
  exactAt: null,
  lateReason: null,
  problem: null,
});

/** The first figure under the limit in a place stops the round; half a piece stays; a whole one goes on. */
function moved(state: RoundState, look: WalkLook, saved: Saved): RoundState {
  if (saved.under && !state.stopped.includes(look.equipment))
    return { ...state, stopped: [...state.stopped, look.equipment], face: { kind: 'stop', saved } };
  return progress(state, look) === 'all' ? goOn(state) : { ...state, face: entry };
}

/** The round itself is written with its first entry. */
function begin(state: RoundState, pen: Pen, at: number): After {
  if (state.round !== null) return stays(state);
  const round = pen.id();
  const startedAt = Math.min(at, pen.now);
  const begun = { ...state, round, startedAt };
  return {
    state: begun,
    write: [roundDraft(pen, startedAt, roundBody(begun, round, 'started', null))],
    drop: [],
  };
}

const roundBody = (
  state: RoundState,
  round: string,
  status: 'started' | 'done',
  endedAt: string | null,
): Body<'round'> => ({
  round,
  planned_at: state.planned.plannedAt === null ? null : new Date(state.planned.plannedAt).toISOString(),
  status,
  equipment: [...new Set(state.looks.map((look) => look.equipment))],
  ended_at: endedAt,
  reason: null,
  note: null,
});

function ended(state: RoundState, around: Around): After {
  if (state.round === null || state.startedAt === null || state.hand === null)
    return stays({ ...state, ended: true });
  const pen: Pen = { now: around.now, by: state.hand, id: around.id };
  const body = roundBody(state, state.round, 'done', new Date(around.now).toISOString());
  return { state: { ...state, ended: true }, write: [roundDraft(pen, state.startedAt, body)], drop: [] };
}

function exactly(state: RoundState, at: number, reason: string | null, around: Around): After {
  const bookAt = around.now + around.bookAhead;
  const next: RoundState = { ...state, exactAt: at, minutesAgo: 0, lateReason: reason, face: entry };
  if (at <= bookAt + state.planned.aheadMin * 60_000) return stays(next);
  const spot = state.looks[state.current]?.spots[0] ?? 'coldest';
  return stays({ ...next, face: { kind: 'question', ask: { about: 'future', at, bookAt }, spot } });
}

/** The figure asked about, as the hand decided: taken as it is, or with the point moved. */
function answered(state: RoundState, typed: string, around: Around): After {
  if (state.face.kind !== 'question') return stays(state);
  return save({ ...state, typed }, { spot: state.face.spot, figureAsked: true, heldS: undefined }, around);
}

function trusted(state: RoundState, trust: 'book' | 'phone', around: Around): After {
  if (state.face.kind !== 'question') return stays(state);
  const { ask, spot } = state.face;
  const next = { ...state, trustBook: trust === 'book', trustPhone: trust === 'phone', exactAt: null };
  if (ask.about === 'future') return stays({ ...next, trustBook: state.trustBook, face: entry });
  return save(next, { spot, figureAsked: false, heldS: undefined }, around);
}

/** Takes the last figure back. One that never left this device is dropped; any other is struck by an entry. */
function undone(state: RoundState, around: Around): After {
  const last = state.saved.at(-1);
  if (last === undefined) return stays(state);
  const index = state.looks.findIndex((look) => keyOf(look) === last.key);
  const back: RoundState = {
    ...cleared(state),
    saved: state.saved.slice(0, -1),
    typed: last.typed,
    current: index === -1 ? state.current : index,
    face: entry,
  };
  if (around.unsent(last.id)) return { state: back, write: [], drop: [last.id] };
  const pen: Pen = { now: around.now, by: state.hand ?? last.by, id: around.id };
  return { state: back, write: [struckDraft(pen, last.id, around.undoReason)], drop: [] };
}

/** It is no look: the gap stays, and the end of the round asks again. */
function couldNot(
  state: RoundState,
  { reason, text }: { reason: CouldNot | null; text: string },
  around: Around,
): After {
  const look = state.looks[state.current];
  if (look === undefined) return stays(state);
  if (state.hand === null) return stays({ ...state, face: { kind: 'hands' } });
  const pen: Pen = { now: around.now, by: state.hand, id: around.id };
  const begun = begin(state, pen, around.now);
  const note = noteDraft(pen, {
    text,
    lang: around.lang,
    batch: look.batch,
    piece: look.piece,
    equipment: look.equipment,
    probe: null,
    round: begun.state.round,
    could_not: reason ?? 'other',
  });
  const next = goOn({ ...begun.state, skipped: [...begun.state.skipped, keyOf(look)] });
  return { state: next, write: [...begun.write, note], drop: [] };
}

function unanswered(state: RoundState, text: string, around: Around): After {
  const look = state.looks[state.current];
  if (state.hand === null || look === undefined) return stays(state);
  const pen: Pen = { now: around.now, by: state.hand, id: around.id };
  const note = noteDraft(pen, {
    text,
    lang: around.lang,
    batch: look.batch,
    piece: look.piece,
    equipment: look.equipment,
    probe: null,
    round: state.round,
    could_not: null,
  });
  return { state, write: [note], drop: [] };
}

/** One piece under the limit: every numbered piece of the same place is read now, the nearest batch first. */
function withEveryPiece(state: RoundState): RoundState {
  const under = state.looks[state.current];
  if (under === undefined) return state;
  const present = new Set(state.looks.map(keyOf));
  const added = state.planned.groups
    .filter((group) => group.equipment === under.equipment)
    .sort((a, b) => Number(b.batch === under.batch) - Number(a.batch === under.batch))
    .flatMap((group) => piecesOf(state, under, group))
    .filter((look) => !present.has(keyOf(look)));
  const here = state.current + 1;
  return { ...state, looks: [...state.looks.slice(0, here), ...added, ...state.looks.slice(here)] };
}

function piecesOf(
  state: RoundState,
  under: WalkLook,
  group: { equipment: string; batch: string; pieces: number[] },
): WalkLook[] {
  const same = (look: WalkLook): boolean => look.equipment === group.equipment && look.batch === group.batch;
  const pattern = state.planned.looks.find(same) ?? (group.batch === under.batch ? under : null);
  if (pattern === null) return [];
  const first = pattern.spots[0];
  return group.pieces.map((piece) => ({
    ...pattern,
    piece,
    asked: first === undefined ? [] : [first],
    last: null,
  }));
}

/** How many numbered pieces of this place are still unread in this round. */
export function unreadHere(state: RoundState): number {
  const wide = withEveryPiece(state);
  const equipment = state.looks[state.current]?.equipment;
  return toMake(wide).filter((look) => look.equipment === equipment && look.batch !== null).length;
}
