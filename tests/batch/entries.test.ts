import { describe, expect, test } from 'vitest';
import { correctionEntries, strike } from '#app/batch/correction.ts';
import { newBatchEntries } from '#app/batch/new-batch.ts';
import { chosenPieces, stepEntry } from '#app/batch/next-step.ts';
import type { Written } from '#app/client/written.ts';
import { kinds } from '#shared/entries/entry.ts';

const id = (n: number) => `0199e000-0000-7000-8000-00000000000${n}`;
const problemsOf = (entries: Written[]) =>
  entries.flatMap((entry) => kinds[entry.kind].body.safeParse(entry.body).error?.issues ?? []);

const choice = {
  batch: id(1),
  name: ' PS-C ',
  food: id(2),
  pieces: 6,
  made: 'new',
  sources: [],
  step: 'hot_hold',
  equipment: id(3),
  details: {},
  note: null,
} satisfies Parameters<typeof newBatchEntries>[0];

describe('what a new batch writes', () => {
  test('a food that nobody has set up goes before it, without a class and with nothing loosened', () => {
    const [food, batch] = newBatchEntries({ ...choice, typed: ' Goat ' });
    expect(problemsOf(food === undefined ? [] : [food])).toEqual([]);
    expect(food).toMatchObject({
      kind: 'food',
      body: { food: id(2), name: 'Goat', class: 'unknown', sealed_commercial: false, active: true },
    });
    expect(batch).toMatchObject({ kind: 'batch', body: { food: id(2) } });
  });

  test('a new batch is two entries: what it is, then where it goes', () => {
    const entries = newBatchEntries(choice);
    expect(problemsOf(entries)).toEqual([]);
    expect(entries).toEqual([
      {
        kind: 'batch',
        body: { batch: id(1), name: 'PS-C', food: id(2), pieces: 6, made: 'new', source: [], note: null },
      },
      {
        kind: 'step',
        body: { batch: id(1), pieces: null, step: 'hot_hold', equipment: id(3), details: {} },
      },
    ]);
  });

  test('a cut of whole pieces ends those pieces, and says into what they went', () => {
    const entries = newBatchEntries({
      ...choice,
      made: 'cut',
      sources: [{ batch: id(4), pieces: [2, 3], all: true }],
    });
    expect(problemsOf(entries)).toEqual([]);
    expect(entries[0]?.body).toMatchObject({
      made: 'cut',
      source: [{ batch: id(4), pieces: [2, 3], words: null }],
    });
    expect(entries[2]?.body).toEqual({
      batch: id(4),
      pieces: [2, 3],
      step: 'gone',
      equipment: null,
      details: { reason: 'used_up', text: 'PS-C' },
    });
  });

  test('a pan taken from a kettle leaves the kettle where it is', () => {
    const entries = newBatchEntries({
      ...choice,
      made: 'split',
      sources: [{ batch: id(4), pieces: null, all: false }],
    });
    expect(entries.map((entry) => entry.kind)).toEqual(['batch', 'step']);
  });
});

describe('what a step writes', () => {
  test('food that is gone is nowhere, and blank words are not written', () => {
    const entry = stepEntry({
      batch: id(1),
      pieces: [1],
      step: 'gone',
      equipment: id(3),
      details: { reason: 'discarded', amount: '8.4 lb', text: '' },
    });
    expect(problemsOf([entry])).toEqual([]);
    expect(entry.body).toEqual({
      batch: id(1),
      pieces: [1],
      step: 'gone',
      equipment: null,
      details: { reason: 'discarded', amount: '8.4 lb' },
    });
  });

  test.each([
    { chosen: [3, 1, 2], left: [1, 2, 3], pieces: null, why: 'all that are left: no list is needed' },
    { chosen: [3, 1], left: [1, 2, 3], pieces: [1, 3], why: 'some, in their order' },
    { chosen: [1], left: [], pieces: [1], why: 'a piece that just went is still named' },
  ])('$chosen of $left is written as $pieces: $why', ({ chosen, left, pieces }) => {
    expect(chosenPieces(chosen, left)).toEqual(pieces);
  });
});

describe('what a correction writes', () => {
  test('one amendment for each field meant otherwise, none for the rest', () => {
    const entries = correctionEntries(
      id(5),
      { value: '1450', piece: '1', spot: 'edge' },
      { value: '145.0', piece: '1', spot: 'core' },
      ' decimal point missed ',
    );
    expect(problemsOf(entries)).toEqual([]);
    expect(entries.map((entry) => entry.body)).toEqual([
      { target: id(5), field: 'value', from: '1450', to: '145.0', reason: 'decimal point missed' },
      { target: id(5), field: 'spot', from: 'edge', to: 'core', reason: 'decimal point missed' },
    ]);
  });

  test('a reading moved to the right piece is one amendment of its piece', () => {
    expect(correctionEntries(id(5), { piece: '3' }, { piece: '4' }, 'wrong row')).toEqual([
      {
        kind: 'amendment',
        body: { target: id(5), field: 'piece', from: '3', to: '4', reason: 'wrong row' },
      },
    ]);
  });

  test('nothing changed writes nothing', () => {
    expect(correctionEntries(id(5), { value: '145.0' }, { value: '145.0' }, 'x')).toEqual([]);
  });

  test('undo strikes, and the entry stays', () => {
    expect(strike(id(5), 'undo').body).toEqual({
      target: id(5),
      field: 'struck',
      from: 'false',
      to: 'true',
      reason: 'undo',
    });
  });
});
