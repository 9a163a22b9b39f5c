import { describe, expect, it } from 'vitest';
import { levelsOf, type ProofLevel } from '#lib/between/levels.ts';
import { withoutPower } from '#lib/between/no-power.ts';
import { ms, type Night, night } from '../fold/night.ts';

/**
 * Sides of 4, 8 and 14 in: k = 3600 · 1.6e-7 · (π/2)² · (1/0.0508² + 1/0.1016² + 1/0.1778²) = 0.7333 1/h. A core of
 * 165 ± 2 °F over a room of 50 °F is above 135 °F for ln(113/85)/0.7333 = 0.3883 h = 23.3 min at least.
 */
const size = { piece_in: [4, 8, 14] };

const held = (details = {}): Night =>
  night()
    .plan('hot_hold', ['cab1'], { every_min: 120, at_most_min: 150 })
    .batch('18:00', 'B', 2, 'brisket')
    .step('20:00', 'B', 'hot_hold', 'cab1', null, details);

const off = (written: Night, from: string, to: string | null): Night => {
  written.add('equipment_off', from, { equipment: 'cab1', reason: 'power', since_basis: null, text: null });
  return to === null
    ? written
    : written.add('equipment_on', to, { equipment: 'cab1', reason: 'power', text: null });
};

const levels = (written: Night, clock: string): ProofLevel[] => {
  const book = written.book(clock);
  const run = book.batches.get('B')?.runs[0];
  if (run === undefined) throw new Error('no run');
  return levelsOf(book, run, 1)?.levels ?? [];
};
const level = (written: Night, clock: string, name: ProofLevel['level']): ProofLevel => {
  const found = levels(written, clock).find((one) => one.level === name);
  if (found === undefined) throw new Error('no level');
  return found;
};

describe('the levels of proof of a hold', () => {
  it('lets a look prove its own moment and no more', () => {
    const written = held(size).read('20:30', 'B1 core', '165').read('21:30', 'B1 edge', '131');
    expect(level(written, '22:00', 'readings')).toEqual({
      level: 'readings',
      looks: [ms('20:30')],
      from: ms('20:00'),
      to: ms('22:00'),
    });
  });

  it('says of the core for how long after a look it was above the limit, by the size of the piece', () => {
    const found = level(held(size).read('20:30', 'B1 core', '165'), '22:00', 'thickness');
    if (!('bounds' in found)) throw new Error('no bounds');
    expect(found.kMax).toBeCloseTo(0.7333, 3);
    expect(found.bounds.above).toBeCloseTo(23.3, 1);
    expect(found.bounds.belowLeast).toBe(0);
    expect(found.bounds.belowMost).toBeCloseTo(120 - 23.3, 1);
    expect(found.bounds.stretches.map(({ kind }) => kind)).toEqual(['not_shown', 'above', 'not_shown']);
  });

  it('takes a side that nobody wrote as small as the one that is known', () => {
    // 4 in alone: a cube of 4 in, k = 1.6525 1/h, 10.3 min.
    const found = level(held({ piece_in: [4] }).read('20:30', 'B1 core', '165'), '22:00', 'thickness');
    if (!('bounds' in found)) throw new Error('no bounds');
    expect(found.bounds.above).toBeCloseTo(10.3, 1);
  });

  it('bridges two readings of the core only where the heat is known to be off all the time', () => {
    const written = held(size).read('21:00', 'B1 core', '165').read('22:00', 'B1 core', '140');
    const on = level(off(written, '21:05', '21:55'), '22:00', 'heater_off');
    if (!('bounds' in on)) throw new Error('no bounds');
    expect(on.bounds.above).toBeLessThan(30);
    const whole = held(size).read('21:00', 'B1 core', '165').read('22:00', 'B1 core', '140');
    const bridged = level(off(whole, '20:55', null), '22:00', 'heater_off');
    if (!('bounds' in bridged)) throw new Error('no bounds');
    expect(bridged.bounds.above).toBeCloseTo(60, 6);
  });

  it('says at least how long the core was below, where a low reading cannot have come at once', () => {
    // 120 ± 2 with the heat maybe on: back from 122 the core was under 135 for ln(85/72)/0.7333 h = 13.6 min.
    const written = held(size).read('21:00', 'B1 core', '165').read('23:00', 'B1 core', '120');
    const found = level(written, '23:00', 'thickness');
    if (!('bounds' in found)) throw new Error('no bounds');
    expect(found.bounds.belowLeast).toBeCloseTo(13.6, 1);
  });

  it('names a stretch that cannot be: without heat nothing gets warmer', () => {
    const written = held(size).read('21:00', 'B1 core', '140').read('22:00', 'B1 core', '160');
    const found = level(off(written, '20:55', null), '22:00', 'heater_off');
    if (!('bounds' in found)) throw new Error('no bounds');
    expect(found.bounds.inconsistent).toBeCloseTo(60, 6);
  });

  it('has no bound from a thin end, without a size, or without a cut', () => {
    expect(level(held(size).read('21:00', 'B1 edge', '150'), '22:00', 'thickness')).toMatchObject({
      has: false,
      lacks: 'core',
    });
    expect(level(held().read('21:00', 'B1 core', '150'), '22:00', 'thickness')).toMatchObject({
      has: false,
      lacks: 'size',
    });
    expect(level(held(size).read('21:00', 'B1 core', '150'), '22:00', 'heater_off')).toMatchObject({
      has: false,
      lacks: 'off',
    });
  });

  it('bridges looks with a record of the coldest place and with nothing else', () => {
    const log = { source: 'logger' as const };
    const written = held()
      .read('21:00', 'B1 coldest', '150', log)
      .read('21:05', 'B1 coldest', '149', log)
      .read('21:10', 'B1 coldest', '148', log)
      .read('22:00', 'B1 coldest', '150');
    expect(level(written, '22:30', 'coldest_log')).toMatchObject({ has: true, minutes: 10 });
    const core = held().read('21:00', 'B1 core', '150', log).read('21:05', 'B1 core', '150', log);
    expect(level(core, '22:00', 'coldest_log')).toEqual({ level: 'coldest_log', has: false });
  });

  it('changes no verdict: between the looks the hold stays not shown', () => {
    const written = held(size).read('21:00', 'B1 core', '165').read('22:00', 'B1 core', '160');
    const run = off(written, '20:55', null).book('22:00').batches.get('B')?.runs[0];
    expect(run?.stages.between_readings?.verdict).toBe('not_shown');
  });
});

describe('a cabinet without power', () => {
  it('keeps the core of the piece that is lowest above the limit for so long at least', () => {
    const book = held(size).read('21:00', 'B1 core', '165').read('21:01', 'B2 core', '150').book('21:10');
    const run = book.batches.get('B')?.runs[0];
    const found = run === undefined ? null : withoutPower(book, run);
    // 150 − 2 − 50 = 98 over 85: ln(98/85)/0.7333 = 0.1940 h = 11.6 min
    expect(found).toMatchObject({ has: true, piece: 2 });
    if (found?.has !== true) throw new Error('no bound');
    expect(found.hours * 60).toBeCloseTo(11.6, 1);
  });
});
