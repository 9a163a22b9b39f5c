import { describe, expect, it } from 'vitest';
import { darkBatches } from '#lib/between/dark.ts';
import { growthBound } from '#lib/between/growth.ts';
import { restPlan } from '#lib/between/rest.ts';
import { ms, type Night, night } from '../fold/night.ts';

const power = { reason: 'power', text: null };
const trip = (written: Night, from: string, to: string | null, equipment = 'cab1'): Night => {
  written.add('equipment_off', from, { equipment, since_basis: null, ...power });
  return to === null ? written : written.add('equipment_on', to, { equipment, ...power });
};
const held = (details = {}): Night =>
  night()
    .plan('hot_hold', ['cab1'], { every_min: 120, at_most_min: 150 })
    .batch('18:00', 'B', 1, 'brisket')
    .step('20:00', 'B', 'hot_hold', 'cab1', null, details);

const dark = (written: Night, clock: string) => darkBatches(written.book(clock));

describe('a night with a power trip', () => {
  it('gives at least and at most, from look to look, and clears nothing by itself', () => {
    const written = held().read('00:50', 'B1 edge', '150').read('03:10', 'B1 edge', '131');
    const [found] = dark(trip(written, '01:00', '03:00'), '04:00');
    expect(found?.cleared).toBe(false);
    expect(found?.pieces[0]).toMatchObject({
      dark: { from: ms('01:00'), to: ms('03:00') },
      over: { from: ms('00:50'), to: ms('03:10') },
      foodLeast: 0,
      foodMost: 140,
      goesOn: false,
    });
  });

  it('is below at least from the look that found it so until the heat came back', () => {
    const written = held()
      .read('00:50', 'B1 edge', '150')
      .read('02:00', 'B1 edge', '130')
      .read('03:10', 'B1 edge', '137');
    const [found] = dark(trip(written, '01:00', '03:00'), '04:00');
    expect(found?.pieces[0]?.foodLeast).toBe(60);
  });

  it('is not cleared by a good look before and a good look after', () => {
    const written = held().read('00:50', 'B1 edge', '170').read('01:40', 'B1 edge', '160');
    expect(dark(trip(written, '01:00', '01:30'), '02:00')[0]?.cleared).toBe(false);
  });

  it('is covered by a logger at the coldest place that read all the time', () => {
    const written = held();
    for (let minute = 0; minute <= 40; minute += 5)
      written.read(`01:${String(minute).padStart(2, '0')}`, 'B1 coldest', '150', { source: 'logger' });
    expect(dark(trip(written, '01:10', '01:30'), '02:00')[0]?.cleared).toBe(true);
    const low = held();
    for (let minute = 0; minute <= 40; minute += 5)
      low.read(`01:${String(minute).padStart(2, '0')}`, 'B1 coldest', minute === 20 ? '134' : '150', {
        source: 'logger',
      });
    expect(dark(trip(low, '01:10', '01:30'), '02:00')[0]?.cleared).toBe(false);
  });

  it('goes on while the power is off, and has no look after', () => {
    const [found] = dark(trip(held().read('00:50', 'B1 edge', '150'), '01:00', null), '02:00');
    expect(found?.pieces[0]).toMatchObject({ goesOn: true, after: null, foodMost: 70 });
    expect(found?.pieces[0]?.growth).toEqual({ has: false, lacks: 'readings' });
  });

  it('bounds the core by the size of the piece: 18.1 min after a core of 158 °F', () => {
    // ln((156 − 50)/85)/0.7333 h = 18.1 min; the rest of the 140 min is open.
    const written = held({ piece_in: [4, 8, 14] })
      .read('00:50', 'B1 core', '158')
      .read('03:10', 'B1 core', '137');
    const core = dark(trip(written, '01:00', '03:00'), '04:00')[0]?.pieces[0]?.core;
    expect(core?.above).toBeCloseTo(18.1, 1);
    expect(core?.belowMost).toBeCloseTo(140 - 18.1, 1);
  });

  it('leaves out food that stood elsewhere, and food that cools', () => {
    expect(dark(trip(held().read('00:50', 'B1 edge', '150'), '01:00', '03:00', 'cab2'), '04:00')).toEqual([]);
    const cools = night()
      .batch('19:00', 'P', 1)
      .step('20:00', 'P', 'cooling', 'cab1')
      .read('20:00', 'P1 core', '140');
    expect(dark(trip(cools, '21:00', '22:00'), '23:00')).toEqual([]);
  });
});

describe('growth as an upper bound', () => {
  const at = (clock: string, value: number) => ({ at: ms(clock), value, u: 2 });

  it('takes the fastest published rate on the way: 2 h at 6.06/ln 10 log10 an hour', () => {
    const found = growthBound('beef_whole', at('01:00', 158), at('03:00', 100), true);
    expect(found).toMatchObject({ has: true });
    expect(found.has && found.most).toBeCloseTo((2 * 6.06) / Math.LN10, 3);
  });

  it('takes the whole way down to the room where heat may have come back in between', () => {
    const warm = growthBound('beef_whole', at('01:00', 158), at('03:00', 150), true);
    const unknown = growthBound('beef_whole', at('01:00', 158), at('03:00', 150), false);
    expect(warm.has && warm.most).toBe(0);
    expect(unknown.has && unknown.most).toBeCloseTo((2 * 6.06) / Math.LN10, 3);
  });

  it('has no figure for food that nobody measured', () => {
    expect(growthBound('sausage_cooked', at('01:00', 158), at('03:00', 100), true)).toEqual({
      has: false,
      lacks: 'food',
    });
  });
});

describe('the rest planner', () => {
  const rest = (details = {}): Night =>
    night().batch('18:00', 'B', 1, 'brisket').step('20:00', 'B', 'rest', 'rack', null, details);
  const plan = (written: Night, clock: string) => {
    const book = written.book(clock);
    const run = book.batches.get('B')?.runs[0];
    return run === undefined ? null : restPlan(book, run);
  };

  it('goes from two readings of the core to 160 °F, with the air where it rests', () => {
    // r = log10((203 − 75)/(190 − 75))/0.5 = 0.0930; 190 to 160: log10(115/85)/0.0930 = 1.411 h after 20:40.
    const found = plan(rest().read('20:10', 'B1 core', '203').read('20:40', 'B1 core', '190'), '20:41');
    expect(found?.by).toBe('readings');
    expect(((found?.middle ?? 0) - ms('20:40')) / 3_600_000).toBeCloseTo(1.411, 2);
    expect(found?.earliest ?? 0).toBeLessThan(found?.middle ?? 0);
    expect(found?.air).toEqual({ value: 75, within: 15, basis: 'assumed' });
  });

  it('goes from the size of the piece before there are two readings', () => {
    const found = plan(rest({ piece_in: [4, 8, 14] }), '20:05');
    expect(found).toMatchObject({ by: 'size', from: { value: 203, basis: 'common_practice' } });
    expect(found?.earliest ?? 0).toBeGreaterThan(ms('20:00'));
  });

  it('has no time without readings and without a size', () => {
    expect(plan(rest(), '20:05')).toMatchObject({ by: 'nothing', earliest: null });
  });
});
