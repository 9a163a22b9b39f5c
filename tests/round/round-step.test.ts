import { describe, expect, test } from 'vitest';
import {
  opened,
  progress,
  type RoundPlanned,
  type RoundState,
  toMake,
  type WalkLook,
} from '#app/round/round-state.ts';
import { type Around, type Press, pressed } from '#app/round/round-step.ts';
import { saveOf } from '#app/round/useKeyboard.ts';
import { type Draft, type DraftOf, draftSchema, type Kind } from '#shared/entries/entry.ts';

const idOf = (n: number): string => `01999999-0000-7000-8000-${String(n).padStart(12, '0')}`;
const [north, south, brisket, pork, chub] = [idOf(1), idOf(2), idOf(3), idOf(4), idOf(5)];
const [wendell, delia, red, blue] = [idOf(6), idOf(7), idOf(8), idOf(9)];
const now = Date.parse('2026-10-17T08:12:00Z');

const look = (over: Partial<WalkLook>): WalkLook => ({
  equipment: north,
  equipmentName: 'North',
  batch: brisket,
  batchName: 'BR-A',
  food: 'Brisket',
  step: 'hot_hold',
  piece: 1,
  pieceOf: 3,
  counted: 'pieces',
  spots: ['edge', 'core'],
  asked: ['edge', 'core'],
  last: null,
  limit: { value: 135, unit: 'degF', comparison: 'at_or_above', section: '3-501.16(A)(1)' },
  limits: { degF: 135, degC: 57 },
  asksHeld: null,
  blocked: false,
  ...over,
});

const planned: RoundPlanned = {
  round: null,
  startedAt: null,
  plannedAt: now,
  looks: [
    look({ batch: null, step: null, piece: null, spots: ['air'], asked: ['air'], limit: null, limits: null }),
    look({}),
    look({ equipment: south, batch: pork, piece: null, spots: ['coldest'], asked: ['coldest'] }),
  ],
  done: [],
  groups: [
    { equipment: north, batch: brisket, pieces: [1, 2, 3] },
    { equipment: south, batch: chub, pieces: [1, 2] },
  ],
  probes: [
    { id: red, unit: 'degF' },
    { id: blue, unit: 'degC' },
  ],
  unit: 'degF',
  oddAbove: 250,
  jump: { degF: 60, degC: 33 },
  lateAfterMin: 15,
  aheadMin: 5,
};

let count = 100;
const around = (over: Partial<Around> = {}): Around => ({
  now,
  bookAhead: 0,
  id: () => idOf(count++),
  unsent: () => false,
  lang: 'en',
  undoReason: 'taken back at the keys',
  ...over,
});

const start = (over: Partial<RoundPlanned> = {}): RoundState => opened({ ...planned, ...over }, wendell, red);
const type = (state: RoundState, typed: string): RoundState =>
  [...typed].reduce((s, key) => pressed(s, { do: 'key', key: key as '1' }, around()).state, state);
const read = (state: RoundState, typed: string, what: Press, over: Partial<Around> = {}) =>
  pressed(type(state, typed), what, around(over));
const only = <K extends Kind>(drafts: readonly Draft[], kind: K): DraftOf<K> => {
  const found = drafts.filter((d) => d.kind === kind);
  expect(found).toHaveLength(1);
  return found[0] as DraftOf<K>;
};
/** The state at piece 1 in North, the air already read. */
const atPiece = (over: Partial<RoundPlanned> = {}): RoundState =>
  read(start(over), '150', { do: 'save', spot: 'air' }).state;

describe('a figure takes its digits and one more tap', () => {
  test('the first save writes the round and the reading, both fit their schemas', () => {
    const { state, write } = read(start(), '150', { do: 'save', spot: 'air' });
    expect(write.map((d) => d.kind)).toEqual(['round', 'reading']);
    for (const draft of write) expect(draftSchema(draft.kind).safeParse(draft).error).toBeUndefined();
    expect(only(write, 'round').body).toMatchObject({ status: 'started', equipment: [north, south] });
    expect(only(write, 'reading').body).toMatchObject({
      batch: null,
      equipment: north,
      spot: 'air',
      typed: '150',
      value: 150,
      unit: 'degF',
      probe: red,
      round: state.round,
    });
    expect(state).toMatchObject({ typed: '', current: 1, face: { kind: 'entry' } });
  });

  test('the round is written once', () => {
    const { write } = read(atPiece(), '142', { do: 'save', spot: 'edge' });
    expect(write.map((d) => d.kind)).toEqual(['reading']);
  });

  test('what was typed goes into the book as typed (demand:1 demand:10)', () => {
    const { write } = read(atPiece(), '158.0', { do: 'save', spot: 'edge' });
    expect(only(write, 'reading').body).toMatchObject({ typed: '158.0', value: 158 });
  });

  test('a reading carries the correction of an adjusted thermometer, and stops by the worse of the two', () => {
    const probes = (correction: number | null) => [{ id: red, unit: 'degF' as const, correction }];
    const low = read(atPiece({ probes: probes(-1.5) }), '136', { do: 'save', spot: 'edge' });
    expect(only(low.write, 'reading').body).toMatchObject({ typed: '136', value: 136, correction: -1.5 });
    expect(low.state.saved.at(-1)?.under).toBe(true); // 134.5
    const bare = read(atPiece({ probes: probes(null) }), '136', { do: 'save', spot: 'edge' });
    expect(only(bare.write, 'reading').body.correction).toBeNull();
    expect(bare.state.saved.at(-1)?.under).toBe(false);
    const high = read(atPiece({ probes: probes(1.5) }), '134', { do: 'save', spot: 'edge' });
    expect(high.state.saved.at(-1)?.under).toBe(true); // the typed one is the worse
  });

  test('each figure has the moment of its own tap, never one stamp for the walk (demand:8)', () => {
    const first = read(start(), '150', { do: 'save', spot: 'air' });
    const second = read(first.state, '142', { do: 'save', spot: 'edge' }, { now: now + 40_000 });
    const third = read(second.state, '151', { do: 'save', spot: 'core' }, { now: now + 65_000 });
    const times = [first, second, third].map(({ write }) => Date.parse(only(write, 'reading').at));
    expect(times).toEqual([now, now + 40_000, now + 65_000]);
  });

  test.each(['', '-', '.', '-.'])('"%s" is no figure: nothing is written and never a 0', (typed) => {
    const { state, write } = read(atPiece(), typed, { do: 'save', spot: 'edge' });
    expect(write).toEqual([]);
    expect(state).toMatchObject({ problem: 'no_figure', typed });
  });

  test('half a piece stays until the other end is read', () => {
    const half = read(atPiece(), '142', { do: 'save', spot: 'edge' }).state;
    expect(half.current).toBe(1);
    expect(progress(half, planned.looks[1] as WalkLook)).toBe('half');
    const whole = read(half, '150', { do: 'save', spot: 'core' }).state;
    expect(whole.current).toBe(2);
  });

  test('nobody on the key: asked whose hand, and what was typed stays', () => {
    const { state, write } = pressed(
      type(opened(planned, null, red), '150'),
      { do: 'save', spot: 'air' },
      around(),
    );
    expect(write).toEqual([]);
    expect(state).toMatchObject({ face: { kind: 'hands' }, typed: '150' });
  });

  test('no thermometer chosen: asked which, and what was typed stays', () => {
    const { state } = pressed(
      type(opened(planned, wendell, null), '150'),
      { do: 'save', spot: 'air' },
      around(),
    );
    expect(state).toMatchObject({ face: { kind: 'probes' }, typed: '150' });
  });

  test('a thermometer in Celsius writes Celsius and is compared with the figure published in Celsius', () => {
    const celsius = pressed(atPiece(), { do: 'probe', probe: blue }, around()).state;
    const kept = read(celsius, '57.0', { do: 'save', spot: 'edge' });
    expect(only(kept.write, 'reading').body.unit).toBe('degC');
    expect(kept.state.face.kind).toBe('entry');
    expect(read(celsius, '56.9', { do: 'save', spot: 'edge' }).state.face.kind).toBe('stop');
  });
});

describe('Enter saves at the first free key, Shift+Enter at the second', () => {
  test('thin end, then thick part; with the thin end saved, Enter means the thick part', () => {
    expect(saveOf(atPiece(), false)).toEqual({ do: 'save', spot: 'edge' });
    expect(saveOf(atPiece(), true)).toEqual({ do: 'save', spot: 'core' });
    const half = read(atPiece(), '142', { do: 'save', spot: 'edge' }).state;
    expect(saveOf(half, false)).toEqual({ do: 'save', spot: 'core' });
    expect(saveOf(start(), true)).toBeNull(); // the air has one key
  });
});

describe('an earlier look keeps its own time', () => {
  test('the chip moves the time of the look and falls back to now', () => {
    const earlier = pressed(atPiece(), { do: 'ago', minutes: 10 }, around()).state;
    const { state, write } = read(earlier, '142', { do: 'save', spot: 'edge' });
    expect(only(write, 'reading')).toMatchObject({
      at: '2026-10-17T08:02:00Z',
      entered_at: '2026-10-17T08:12:00Z',
    });
    expect(state.minutesAgo).toBe(0);
  });

  test('an exact time from paper, with its reason where it is late (demand:7)', () => {
    const at = Date.parse('2026-10-17T07:00:00Z');
    const paper = pressed(atPiece(), { do: 'exact', at, reason: 'typed from paper' }, around()).state;
    const { write } = read(paper, '142', { do: 'save', spot: 'edge' });
    expect(only(write, 'reading')).toMatchObject({ at: '2026-10-17T07:00:00Z' });
    expect(only(write, 'reading').body.late_reason).toBe('typed from paper');
  });

  test('exactly 15 minutes ago is not late: no reason is written', () => {
    const paper = pressed(atPiece(), { do: 'exact', at: now - 15 * 60_000, reason: 'paper' }, around()).state;
    expect(
      only(read(paper, '142', { do: 'save', spot: 'edge' }).write, 'reading').body.late_reason,
    ).toBeNull();
  });

  test('a time of the future is asked about', () => {
    const { state } = pressed(atPiece(), { do: 'exact', at: now + 6 * 60_000, reason: null }, around());
    expect(state.face).toMatchObject({ kind: 'question', ask: { about: 'future' } });
  });

  test('a phone 5 minutes ahead is taken, one further ahead is asked about once', () => {
    const five = read(atPiece(), '142', { do: 'save', spot: 'edge' }, { bookAhead: -5 * 60_000 });
    expect(five.write).toHaveLength(1);
    const six = read(atPiece(), '142', { do: 'save', spot: 'edge' }, { bookAhead: -6 * 60_000 });
    expect(six.write).toEqual([]);
    expect(six.state.face).toMatchObject({ kind: 'question', ask: { about: 'clock', ahead: true } });
    const book = pressed(six.state, { do: 'clock', trust: 'book' }, around({ bookAhead: -6 * 60_000 }));
    expect(only(book.write, 'reading').at).toBe('2026-10-17T08:06:00Z');
    expect(
      read(book.state, '150', { do: 'save', spot: 'core' }, { bookAhead: -6 * 60_000 }).write,
    ).toHaveLength(1);
  });
});

describe('a figure that can hardly be is asked about, never refused and never changed in silence', () => {
  test('1450: both values are offered and nothing is written until a key is pressed (demand:65)', () => {
    const { state, write } = read(atPiece(), '1450', { do: 'save', spot: 'edge' });
    expect(write).toEqual([]);
    expect(state).toMatchObject({ typed: '1450', face: { ask: { suggestion: '145.0', bound: 250 } } });
    const meantIt = pressed(state, { do: 'answer', typed: '145.0' }, around());
    expect(only(meantIt.write, 'reading').body).toMatchObject({ typed: '145.0', value: 145 });
    const asIs = pressed(state, { do: 'answer', typed: '1450' }, around());
    expect(only(asIs.write, 'reading').body).toMatchObject({ typed: '1450', value: 1450 });
    expect(pressed(state, { do: 'again' }, around())).toMatchObject({ write: [], state: { typed: '' } });
  });

  test('exactly the bound is not asked about, a tenth over is', () => {
    expect(read(atPiece(), '250', { do: 'save', spot: 'edge' }).write).toHaveLength(1);
    expect(read(atPiece(), '250.1', { do: 'save', spot: 'edge' }).state.face.kind).toBe('question');
  });

  test('15.2 for 152: far from the last figure of the same place, the point is asked about', () => {
    const last = {
      at: now - 1,
      by: 'WO',
      figures: [{ spot: 'edge' as const, typed: '151', unit: 'degF' as const }],
    };
    const state = atPiece({ looks: planned.looks.map((l) => ({ ...l, last })) });
    expect(read(state, '15.2', { do: 'save', spot: 'edge' }).state.face).toMatchObject({
      ask: { about: 'figure', kind: 'jump', suggestion: '152', bound: 151 },
    });
    expect(read(state, '211', { do: 'save', spot: 'edge' }).write).toHaveLength(1); // 60 further: not over
    expect(read(state, '211.1', { do: 'save', spot: 'edge' }).write).toEqual([]);
  });

  test('a cooling is on its way: falling far is no question', () => {
    const last = {
      at: now - 1,
      by: 'WO',
      figures: [{ spot: 'warmest' as const, typed: '135', unit: 'degF' as const }],
    };
    const cooling = look({
      step: 'cooling',
      spots: ['warmest'],
      asked: ['warmest'],
      last,
      limit: null,
      limits: null,
    });
    expect(read(start({ looks: [cooling] }), '68', { do: 'save', spot: 'warmest' }).write).toHaveLength(2);
  });
});

describe('below the limit the round stops', () => {
  const under = () => read(atPiece(), '134.9', { do: 'save', spot: 'edge' });

  test('134.9 is written and shows the stop list, 135 goes on', () => {
    expect(only(under().write, 'reading').body.value).toBe(134.9);
    expect(under().state.face.kind).toBe('stop');
    expect(read(atPiece(), '135', { do: 'save', spot: 'edge' }).state.face.kind).toBe('entry');
  });

  test('then every piece of the place is asked, this batch first, and nothing twice', () => {
    const { state } = pressed(under().state, { do: 'read_every_piece' }, around());
    const here = toMake(state).filter((l) => l.equipment === north);
    expect(here.map((l) => l.piece)).toEqual([1, 2, 3]); // 1: its thick part is still to come
    expect(here.slice(1).every((l) => l.asked.join() === 'edge')).toBe(true);
    const again = pressed({ ...state, current: 1 }, { do: 'read_every_piece' }, around()).state;
    expect(again.looks).toHaveLength(state.looks.length);
  });

  test('a look out of turn: all of that place is read before the walk goes on', () => {
    const three = [1, 2, 3].map((piece) => look({ piece, asked: ['edge'] }));
    const elsewhere = look({
      equipment: south,
      batch: pork,
      piece: null,
      spots: ['coldest'],
      asked: ['coldest'],
    });
    const last = pressed(start({ looks: [...three, elsewhere] }), { do: 'go', index: 2 }, around()).state;
    expect(read(last, '142', { do: 'save', spot: 'edge' }).state.current).toBe(0);
  });

  test('the list is said once a place: the next piece under it is written and the walk goes on', () => {
    const every = pressed(under().state, { do: 'read_every_piece' }, around()).state;
    const second = read({ ...every, current: 2 }, '120', { do: 'save', spot: 'edge' });
    expect(second.state.saved.at(-1)?.under).toBe(true);
    expect(second.state.face.kind).toBe('entry');
  });

  test('warm air proves nothing and cold air stops nothing', () => {
    expect(read(start(), '90', { do: 'save', spot: 'air' }).state.face.kind).toBe('entry');
  });

  test('food on its way down is not under', () => {
    const cooling = look({ step: 'cooling', spots: ['warmest'], asked: ['warmest'] });
    expect(read(start({ looks: [cooling] }), '80', { do: 'save', spot: 'warmest' }).state.face.kind).toBe(
      'summary',
    );
  });

  test('that nobody answered the telephone is an entry', () => {
    const { write } = pressed(under().state, { do: 'unanswered', text: 'Delia did not answer' }, around());
    expect(only(write, 'note').body).toMatchObject({
      text: 'Delia did not answer',
      could_not: null,
      piece: 1,
    });
    for (const draft of write) expect(draftSchema(draft.kind).safeParse(draft).error).toBeUndefined();
  });
});

describe('a reheat asks whether it stayed, in one tap', () => {
  const reheat = look({
    batch: chub,
    step: 'reheat',
    spots: ['coldest'],
    asked: ['coldest'],
    asksHeld: 15,
    limit: { value: 165, unit: 'degF', comparison: 'at_or_above', section: '3-403.11(A)' },
    limits: { degF: 165, degC: 74 },
  });

  test('at the target it asks, and the answer goes into the book', () => {
    const asked = read(start({ looks: [reheat] }), '165', { do: 'save', spot: 'coldest' });
    expect(asked.state.face).toMatchObject({ kind: 'held', seconds: 15 });
    const stayed = pressed(asked.state, { do: 'held', spot: 'coldest', heldS: 15 }, around());
    expect(only(stayed.write, 'reading').body.held_s).toBe(15);
    const notTimed = pressed(asked.state, { do: 'held', spot: 'coldest', heldS: null }, around());
    expect(only(notTimed.write, 'reading').body.held_s).toBeNull();
  });

  test('below the target there is nothing to ask', () => {
    const { write } = read(start({ looks: [reheat] }), '164.9', { do: 'save', spot: 'coldest' });
    expect(only(write, 'reading').body.held_s).toBeNull();
  });
});

describe('undo stands beside the keys', () => {
  const saved = () => read(atPiece(), '147', { do: 'save', spot: 'edge' });

  test('a figure that left the phone is struck by an entry and comes back to the pad', () => {
    const before = saved().state;
    const { state, write, drop } = pressed(before, { do: 'undo' }, around());
    expect(drop).toEqual([]);
    expect(only(write, 'amendment').body).toMatchObject({
      target: before.saved.at(-1)?.id,
      field: 'struck',
      to: 'true',
    });
    for (const draft of write) expect(draftSchema(draft.kind).safeParse(draft).error).toBeUndefined();
    expect(state).toMatchObject({ typed: '147', current: 1 });
    expect(progress(state, planned.looks[1] as WalkLook)).toBe('none');
  });

  test('one that never left is dropped without a trace', () => {
    const before = saved().state;
    const { write, drop } = pressed(before, { do: 'undo' }, around({ unsent: () => true }));
    expect(write).toEqual([]);
    expect(drop).toEqual([before.saved.at(-1)?.id]);
  });
});

describe('a look that could not be made is a gap, not a look', () => {
  test('it is written as a note, the walk goes on, and it is not counted as read', () => {
    const { state, write } = pressed(atPiece(), { do: 'could_not', reason: 'too_hot', text: '' }, around());
    expect(only(write, 'note').body).toMatchObject({ could_not: 'too_hot', batch: brisket, piece: 1 });
    for (const draft of write) expect(draftSchema(draft.kind).safeParse(draft).error).toBeUndefined();
    expect(state.current).toBe(2);
    expect(progress(state, planned.looks[1] as WalkLook)).toBe('none');
  });

  test('it can be read after all', () => {
    const skipped = pressed(atPiece(), { do: 'could_not', reason: null, text: '' }, around()).state;
    const back = pressed(skipped, { do: 'go', index: 1 }, around()).state;
    expect(back.skipped).toEqual([]);
    expect(back.current).toBe(1);
  });
});

describe('a round has a beginning and an end', () => {
  test('after the last look it ends with the same id and the same start', () => {
    const pieces = planned.looks.slice(2);
    const first = read(start({ looks: pieces }), '150', { do: 'save', spot: 'coldest' });
    expect(first.state.face.kind).toBe('summary');
    const { write, state } = pressed(first.state, { do: 'end' }, around({ now: now + 60_000 }));
    const begun = only(first.write, 'round');
    expect(only(write, 'round')).toMatchObject({
      at: begun.at,
      body: { round: begun.body.round, status: 'done', ended_at: '2026-10-17T08:13:00.000Z' },
    });
    for (const draft of write) expect(draftSchema(draft.kind).safeParse(draft).error).toBeUndefined();
    expect(state.ended).toBe(true);
  });

  test('one that was begun on another screen goes on where it stood', () => {
    const state = start({ round: idOf(77), startedAt: now, done: [{ key: `${north}/air/-`, spot: 'air' }] });
    expect(state.current).toBe(1);
    expect(read(state, '142', { do: 'save', spot: 'edge' }).write.map((d) => d.kind)).toEqual(['reading']);
  });

  test('leaving without a figure writes nothing', () => {
    expect(pressed(start(), { do: 'end' }, around()).write).toEqual([]);
  });

  test('no hand is changed by a save', () => {
    const switched = pressed(atPiece(), { do: 'hand', person: delia }, around()).state;
    expect(only(read(switched, '142', { do: 'save', spot: 'edge' }).write, 'reading').by).toBe(delia);
  });
});
