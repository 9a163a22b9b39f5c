import { describe, expect, test } from 'vitest';
import { roundPaper } from '#app/paper/round-paper.ts';
import type { Batch, Book, Piece } from '#lib/fold/book.ts';
import type { Body } from '#shared/entries/entry.ts';
import type { EquipmentKind } from '#shared/entries/equipment.ts';

const equipment = (id: string, kind: EquipmentKind, active = true): [string, Body<'equipment'>] => [
  id,
  { equipment: id, name: id, kind, set: null, order: 1, note: null, active },
];
const piece = (number: number, at: string, standing: Piece['standing'] = 'serve'): Piece => ({
  number,
  standing,
  step: 'hot_hold',
  equipment: at,
  since: null,
  lastLook: null,
  lastGood: null,
  lowest: null,
  end: null,
});
const food = {
  food: 'f',
  name: 'Brisket',
  name_es: 'Pecho de res',
  class: 'intact_roast',
  counted: 'pieces',
  sealed_commercial: false,
  note: null,
  active: true,
} as const;
const batch = (pieces: Piece[]): Batch => ({
  id: 'b',
  name: 'BR-A',
  food,
  foodId: 'f',
  made: 'new',
  source: [],
  note: null,
  at: 0,
  count: pieces.length,
  pieces,
  runs: [],
  watchPiece: null,
  open: true,
});
const coldest: Body<'plan'> = {
  plan: 'p',
  step: 'hot_hold',
  equipment: ['line'],
  every_min: 120,
  at_most_min: 150,
  checkpoints_min: [],
  looks: 'every_piece',
  spots: ['coldest', 'air'],
  note: null,
  active: true,
};
const book = (pieces: Piece[]): Pick<Book, 'kitchen' | 'batches'> => ({
  kitchen: {
    site: null,
    limits: new Map(),
    people: new Map(),
    probes: new Map(),
    foods: new Map(),
    plans: new Map([['p', coldest]]),
    equipment: new Map([
      equipment('north', 'heated_cabinet'),
      equipment('line', 'steam_table'),
      equipment('old', 'heated_cabinet', false),
      equipment('pit', 'pit'),
      equipment('oven', 'oven'),
    ]),
  },
  batches: new Map([['b', batch(pieces)]]),
});

describe('the round sheet on paper', () => {
  const paper = roundPaper(
    book([piece(1, 'north'), piece(2, 'north', 'gone'), piece(3, 'oven', 'do_not_serve')]),
    'es',
  );

  test('walks past what holds food, and past other equipment only when something is in it', () => {
    expect(paper.map(({ name }) => name)).toEqual(['north', 'line', 'oven']);
  });
  test('has a line for each piece that is there, blocked ones too, and room for what comes (demand:68)', () => {
    const lines = paper.map(({ lines: all }) => all.map(({ piece: number }) => number));
    expect(lines).toEqual([
      [1, null, null],
      [null, null],
      [3, null, null],
    ]);
    expect(paper[0]?.lines[0]).toEqual({ batch: 'BR-A', food: 'Pecho de res', piece: 1 });
  });
  test('asks for the places of the plan, without one for the thin end and the thick part', () => {
    expect(paper.map(({ spots }) => spots)).toEqual([['edge', 'core'], ['coldest'], ['edge', 'core']]);
  });
});
