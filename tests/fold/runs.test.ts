import { describe, expect, it } from 'vitest';
import type { Book, JudgedRun } from '#lib/fold/book.ts';
import { ms, night } from './night.ts';

const runs = (book: Book, batch: string): JudgedRun[] => book.batches.get(batch)?.runs ?? [];
const told = (run: JudgedRun) => [
  run.step,
  run.places.map(({ equipment }) => equipment).join('>'),
  run.pieces,
];

describe('one group of pieces in one place is one step', () => {
  it('takes pieces that are loaded one after another into one cabinet as one run', () => {
    const book = night()
      .batch('18:00', 'A', 3)
      .step('22:10', 'A', 'hot_hold', 'cab1', [1])
      .step('22:13', 'A', 'hot_hold', 'cab1', [2])
      .step('22:16', 'A', 'hot_hold', 'cab1', [3])
      .book('23:00');
    expect(runs(book, 'A').map(told)).toEqual([['hot_hold', 'cab1', [1, 2, 3]]]);
    expect(runs(book, 'A')[0]?.members.map(({ from }) => from)).toEqual([
      ms('22:10'),
      ms('22:13'),
      ms('22:16'),
    ]);
  });

  it('takes two cabinets as two runs', () => {
    const book = night()
      .batch('18:00', 'A', 4)
      .step('22:10', 'A', 'hot_hold', 'cab1', [1, 2])
      .step('22:12', 'A', 'hot_hold', 'cab2', [3, 4])
      .book('23:00');
    expect(runs(book, 'A').map(told)).toEqual([
      ['hot_hold', 'cab1', [1, 2]],
      ['hot_hold', 'cab2', [3, 4]],
    ]);
  });

  it('goes on when the whole group is moved', () => {
    const book = night()
      .batch('18:00', 'A', 2)
      .step('22:10', 'A', 'hot_hold', 'cab1')
      .step('23:10', 'A', 'hot_hold', 'cab2')
      .book('23:30');
    expect(runs(book, 'A').map(told)).toEqual([['hot_hold', 'cab1>cab2', [1, 2]]]);
  });

  it('begins a new step for held food that is moved alone', () => {
    const book = night()
      .batch('18:00', 'A', 2)
      .step('22:10', 'A', 'hot_hold', 'cab1')
      .step('23:10', 'A', 'hot_hold', 'cab2', [2])
      .book('23:30');
    expect(runs(book, 'A').map(({ equipment, start, end }) => [equipment, start, end])).toEqual([
      ['cab1', ms('22:10'), null],
      ['cab2', ms('23:10'), null],
    ]);
  });

  it('takes the clock of a cooling along with the one pan that is moved', () => {
    const book = night()
      .batch('18:00', 'P', 2, 'pulled')
      .step('18:05', 'P', 'cooling', 'ice')
      .read('18:10', 'P1 warmest', '135')
      .read('18:10', 'P2 warmest', '135')
      .read('19:00', 'P2 warmest', '90')
      .step('19:05', 'P', 'cooling', 'walkin', [2])
      .read('20:00', 'P2 warmest', '69')
      .book('20:30');
    const moved = runs(book, 'P').find(({ equipment }) => equipment === 'walkin');
    expect(moved?.start).toBe(ms('18:05'));
    // From 135 °F at 18:10 to 69 °F at 20:00.
    expect(moved?.stages.stage_1?.longest_min).toBe(110);
    expect(moved?.stages.stage_1?.verdict).toBe('kept');
    expect(runs(book, 'P').find(({ equipment }) => equipment === 'ice')?.pieces).toEqual([1]);
  });

  it('begins a new run for a piece that comes back into its cabinet', () => {
    const book = night()
      .batch('18:00', 'A', 2)
      .step('22:00', 'A', 'hot_hold', 'cab1')
      .step('23:00', 'A', 'reheat', 'oven', [2])
      .step('00:00', 'A', 'hot_hold', 'cab1', [2])
      .book('01:00');
    expect(runs(book, 'A').map(told)).toEqual([
      ['hot_hold', 'cab1', [1, 2]],
      ['reheat', 'oven', [2]],
      ['hot_hold', 'cab1', [2]],
    ]);
  });

  it('lets a kettle be parted into pans', () => {
    const book = night()
      .batch('18:00', 'N', null, 'beans')
      .step('18:00', 'N', 'hot_hold', 'steam')
      .read('20:00', 'N coldest', '150')
      .step('21:00', 'N', 'cooling', 'ice', [1, 2])
      .book('21:05');
    expect(runs(book, 'N').map(told)).toEqual([
      ['hot_hold', 'steam', null],
      ['cooling', 'ice', [1, 2]],
    ]);
    expect(book.batches.get('N')?.pieces.map(({ number }) => number)).toEqual([1, 2]);
    expect(runs(book, 'N')[0]?.end).toBe(ms('21:00'));
  });

  it('ends a whole batch with one gone', () => {
    const book = night()
      .batch('18:00', 'A', 2)
      .step('18:00', 'A', 'hot_hold', 'cab1')
      .gone('20:00', 'A', null)
      .book('21:00');
    expect(book.batches.get('A')?.open).toBe(false);
    expect(book.batches.get('A')?.pieces.map(({ standing }) => standing)).toEqual(['gone', 'gone']);
  });
});

describe('a look belongs to the step in which it was made', () => {
  it('gives the core at take-off to the cook, and a look at the very moment of a step to the step that begins', () => {
    const book = night()
      .batch('17:00', 'A', 1)
      .step('17:00', 'A', 'cook', 'pit')
      .read('19:59:30', 'A1 core', '203', { held_s: 15 })
      .step('20:00', 'A', 'rest', 'rack')
      .read('20:00', 'A1 edge', '170')
      .book('20:10');
    expect(runs(book, 'A').map(({ step, looks }) => [step, looks.map(({ typed }) => typed)])).toEqual([
      ['cook', ['203']],
      ['rest', ['170']],
    ]);
  });

  it('gives a look at that moment to the step that ends when it names the old place', () => {
    const book = night()
      .batch('17:00', 'A', 1)
      .step('17:00', 'A', 'cook', 'pit')
      .step('20:00', 'A', 'rest', 'rack')
      .read('20:00', 'A1 core', '203', { equipment: 'pit' })
      .book('20:10');
    expect(runs(book, 'A').map(({ looks }) => looks.length)).toEqual([1, 0]);
  });

  it('judges each piece by its own stay: one that left is not out of its limit until now', () => {
    const book = night()
      .batch('18:00', 'T', 2, 'turkey')
      .step('18:00', 'T', 'hot_hold', 'cab1')
      .read('18:10', 'T1 edge', '150')
      .read('18:10', 'T2 edge', '150')
      .read('20:00', 'T1 edge', '130')
      .gone('20:10', 'T', [1], 'discarded')
      .read('22:00', 'T2 edge', '149')
      .book('23:00');
    const [hold] = runs(book, 'T');
    expect(hold?.stages.at_readings?.verdict).toBe('broken');
    // From the good look of 18:10 to the end of its stay at 20:10.
    expect(hold?.stages.at_readings?.below_longest_min).toBe(120);
    expect(hold?.byPiece.find(({ piece }) => piece === 2)?.stages.at_readings?.verdict).toBe('kept');
  });

  it('shows a cooling the last look before it', () => {
    const book = night()
      .batch('18:00', 'P', 1, 'pulled')
      .step('18:00', 'P', 'hot_hold', 'cab1')
      .read('19:55', 'P1 warmest', '150')
      .step('20:00', 'P', 'cooling', 'ice')
      .read('21:00', 'P1 warmest', '68')
      .book('21:10');
    const cooling = runs(book, 'P')[1];
    expect(cooling?.before.map(({ typed }) => typed)).toEqual(['150']);
    expect(cooling?.stages.stage_1?.longest_min).toBe(65);
  });
});

describe('what the judge is asked with', () => {
  it('warms a sealed commercial package by its own figure the first time, and never again', () => {
    const book = night()
      .batch('18:00', 'S', null, 'sausage')
      .step('18:00', 'S', 'reheat', 'oven')
      .read('18:30', 'S coldest', '140')
      .step('18:40', 'S', 'cooling', 'ice')
      .step('20:00', 'S', 'reheat', 'oven')
      .read('20:30', 'S coldest', '140')
      .book('20:40');
    const reheats = runs(book, 'S').filter(({ step }) => step === 'reheat');
    expect(reheats.map(({ stages }) => stages.temperature?.section)).toEqual(['3-403.11(C)', '3-403.11(A)']);
  });

  const cooked = (air: string[][]) => {
    const made = night()
      .batch('17:00', 'A', 1)
      .step('17:00', 'A', 'cook', 'pit', null, { oven: 'pit', raw_mass_lb: [12] });
    for (const [clock = '', value = ''] of air) made.air(clock, 'pit', value);
    return made
      .read('18:59', 'A1 core', '203', { held_s: 15 })
      .step('19:00', 'A', 'hot_hold', 'cab1')
      .read('19:30', 'A1 edge', '132')
      .book('20:00');
  };

  it('allows a roast the lower figure when cook and oven are shown without a gap', () => {
    const every = ['17:00', '17:30', '18:00', '18:30', '19:00'].map((clock) => [clock, '255']);
    expect(runs(cooked(every), 'A')[1]?.stages.at_readings?.verdict).toBe('kept');
  });

  it('leaves the allowance not shown when the oven was looked at now and then', () => {
    const hold = runs(cooked([['18:00', '255']]), 'A')[1]?.stages.at_readings;
    expect(hold?.verdict).toBe('not_shown');
    expect(hold?.reasons).toContain('allowance_not_shown');
  });

  it('gives no allowance to a roast whose cook is not on record', () => {
    const book = night()
      .batch('18:00', 'A', 1)
      .step('18:00', 'A', 'hot_hold', 'cab1')
      .read('18:30', 'A1 edge', '132')
      .book('19:00');
    expect(runs(book, 'A')[0]?.stages.at_readings?.verdict).toBe('broken');
  });

  it('judges the cook of a turkey and food held cold; preparation has no stages, and says why', () => {
    const book = night()
      .batch('18:00', 'T', 1, 'turkey')
      .step('18:00', 'T', 'cook', 'oven')
      .step('19:00', 'T', 'cutting', 'rack')
      .step('20:00', 'T', 'cold_hold', 'walkin')
      .book('21:00');
    expect(runs(book, 'T').map(({ reason, stages }) => [reason, Object.keys(stages)])).toEqual([
      [null, ['temperature']],
      ['preparation', []],
      [null, ['at_readings', 'between_readings', 'date_mark']],
    ]);
    expect(runs(book, 'T')[0]?.stages.temperature?.section).toBe('3-401.11(A)(3)');
    expect(runs(book, 'T')[2]?.stages.at_readings?.section).toBe('3-501.16(A)(2)');
  });
});
