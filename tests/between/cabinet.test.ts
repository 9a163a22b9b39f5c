import { describe, expect, it } from 'vitest';
import { cabinetChart } from '#lib/between/cabinet-chart.ts';
import { lookingOften } from '#lib/between/cabinet-looks.ts';
import { type CabinetReading, type CabinetRecord, cabinetRecord } from '#lib/between/cabinet-record.ts';
import { ms, type Night, night } from '../fold/night.ts';
import { normal } from '../science/foods.ts';
import { Chance } from '../truth/chance.ts';

const HOUR = 3_600_000;
const START = ms('17:00');

const record = (
  values: readonly number[],
  hours = 1,
  side: CabinetRecord['side'] = 'hot',
): CabinetRecord => ({
  side,
  what: 'air',
  readings: values.map((value, i): CabinetReading => ({ at: START + i * hours * HOUR, value, probe: null })),
  everyMin: null,
  limit: { degF: side === 'hot' ? 135 : 41, figure: limits[side] },
});
const figure = (comparison: 'at_or_above' | 'at_or_below', degF: number) => ({
  id: 'TEST',
  section: '3-501.16',
  edition: '2022',
  checked: 'read' as const,
  where: 'test',
  speaks_of: 'food',
  value: { degF, degC: null },
  first: 'degF' as const,
  comparison,
});
const limits = { hot: figure('at_or_above', 135), cold: figure('at_or_below', 41) };

/** A thermostat that swings slowly about 150 °F with spread 3. */
function swinging(many: number, seed: number): number[] {
  const chance = new Chance(seed);
  let off = 3 * normal(chance);
  return Array.from({ length: many }, () => {
    off = 0.8 * off + 3 * 0.6 * normal(chance);
    return 150 + off;
  });
}

describe('the chart of a cabinet', () => {
  it('has limits from twenty readings on, from the older two thirds', () => {
    expect(cabinetChart(record(swinging(19, 1))).control).toBeNull();
    expect(cabinetChart(record(swinging(20, 1))).control?.from).toBe(20);
    expect(cabinetChart(record(swinging(90, 1))).control?.from).toBe(60);
    expect(cabinetChart(record(Array.from({ length: 40 }, () => 150))).control).toBeNull();
  });

  it('takes neighbours that are alike into account: wider limits, and few runs of a thermostat that only swings', () => {
    const { control, rules } = cabinetChart(record(swinging(300, 3)));
    expect(control?.r1 ?? 0).toBeGreaterThan(0.6);
    expect(control?.sigma ?? 0).toBeGreaterThan(1.5 * (control?.sigmaNaive ?? 9));
    for (const { rule, at } of rules) expect([rule, at.length < 12]).toEqual([rule, true]);
  });

  it('says which reading was outside, and a step down by several readings', () => {
    const values = swinging(80, 5);
    const { rules } = cabinetChart(record([...values.slice(0, 79), 120]));
    const outside = rules.find(({ rule }) => rule === 'outside')?.at.map(({ at }) => at) ?? [];
    expect(outside).toContain(START + 79 * HOUR);
    const chance = new Chance(9);
    const alone = Array.from({ length: 90 }, (_, i) => 150 + normal(chance) - (i >= 70 ? 2.5 : 0));
    const stepped = cabinetChart(record(alone)).rules;
    expect(stepped.find(({ rule }) => rule === 'nine_on_one_side')?.at.length).toBeGreaterThan(5);
    expect(stepped.find(({ rule }) => rule === 'four_of_five')?.at.length).toBeGreaterThan(5);
  });

  it('gives the date at which a straight fall is at the limit, by hand', () => {
    // 150 °F, 0.1 °F lower each hour: at 135 °F after 150 h. A saw of ± 0.5 keeps the limits from being none.
    const falling = Array.from({ length: 100 }, (_, i) => 150 - 0.1 * i + (i % 2 === 0 ? 0.5 : -0.5));
    const { drift } = cabinetChart(record(falling));
    expect(drift?.perDay ?? 0).toBeCloseTo(-2.4, 1);
    expect(drift?.shown).toBe(true);
    expect(Math.abs((drift?.crossesAt ?? 0) - (START + 150 * HOUR))).toBeLessThan(2 * HOUR);
  });

  it('shows no drift where the readings could not show one, and no date for one that leads away', () => {
    let shown = 0;
    for (let seed = 0; seed < 100; seed += 1)
      if (cabinetChart(record(swinging(60, 100 + seed))).drift?.shown === true) shown += 1;
    expect(shown).toBeLessThan(20); // of neighbours taken as independent it would be about half
    const rising = Array.from({ length: 60 }, (_, i) => 150 + 0.1 * i + (i % 2));
    const { drift } = cabinetChart(record(rising));
    expect([drift?.shown, drift?.towardLimit, drift?.crossesAt]).toEqual([true, false, null]);
  });

  it('reads a cooler upside down: what rises nears its limit', () => {
    const rising = Array.from({ length: 60 }, (_, i) => 35 + 0.02 * i + (i % 2 === 0 ? 0.2 : -0.2));
    const { drift } = cabinetChart(record(rising, 1, 'cold'));
    // 6 °F at 0.02 °F an hour: 300 h.
    expect(drift?.perDay ?? 0).toBeCloseTo(0.48, 1);
    expect(drift?.towardLimit).toBe(true);
    expect(Math.abs((drift?.crossesAt ?? 0) - (START + 300 * HOUR))).toBeLessThan(10 * HOUR);
  });
});

describe('small shifts of a cabinet that last', () => {
  /** 150 ± 1 in turns for 30 readings, then 147 for 15: of a mean step of 2 °F, σ = 2/1.128 = 1.7730. */
  const shifted = cabinetChart(
    record(Array.from({ length: 45 }, (_, i) => (i >= 30 ? 147 : 150 + (i % 2 === 0 ? 1 : -1)))),
  );

  it('are seen by the smoothed level, against limits of 3 σ √(0.2/1.8), by hand', () => {
    expect(shifted.smoothed?.low).toBeCloseTo(148.227, 3);
    expect(shifted.smoothed?.high).toBeCloseTo(151.773, 3);
    const out = shifted.smoothed?.out.map(({ at }) => (at - START) / HOUR) ?? [];
    // From −0.11 the level goes 0.2 of the way to −3 at each reading: −0.69, −1.15, −1.52, −1.82.
    expect(out[0]).toBe(33);
    expect(out.at(-1)).toBe(44);
  });

  it('are seen by the sum of departures, with the reading at which they began, by hand', () => {
    // Each 147 adds 3 − 0.8865 = 2.1135; the sum speaks beyond 5 σ = 8.865: at the fifth of them. It was last nothing
    // at the 29th reading, so what it saw began with the 30th.
    expect(shifted.sums?.limit).toBeCloseTo(8.865, 3);
    expect(shifted.sums?.below.at.map(({ at }) => (at - START) / HOUR)).toEqual([
      34, 35, 36, 37, 38, 39, 40, 41, 42, 43, 44,
    ]);
    expect(shifted.sums?.below.began).toBe(START + 29 * HOUR);
    expect(shifted.sums?.below.now).toBeCloseTo(0.1135 + 15 * 2.1135, 3);
    expect(shifted.sums?.above).toMatchObject({ at: [], began: null });
  });

  it('are seldom seen where a thermostat only swings', () => {
    let [smoothed, sums, all] = [0, 0, 0];
    for (let seed = 0; seed < 60; seed += 1) {
      const chart = cabinetChart(record(swinging(90, 300 + seed)));
      all += 1;
      if ((chart.smoothed?.out.length ?? 0) > 0) smoothed += 1;
      if ((chart.sums?.below.at.length ?? 0) + (chart.sums?.above.at.length ?? 0) > 0) sums += 1;
    }
    expect(all).toBe(60);
    // Without the neighbour's share all sixty would speak.
    expect([smoothed, sums].every((many) => many < 30)).toBe(true);
  });

  it('have no level and no sum before there are limits', () => {
    const few = cabinetChart(record(swinging(19, 1)));
    expect([few.smoothed, few.sums]).toEqual([null, null]);
  });
});

const held = (): Night =>
  night({ reheat_may_return: true })
    .plan('hot_hold', [], { at_most_min: 240 })
    .batch('17:00', 'A', 2)
    .step('17:05', 'A', 'hot_hold', 'cab1');

const off = (written: Night, from: string, to: string): Night =>
  written
    .add('equipment_off', from, { equipment: 'cab1', reason: 'power', since_basis: null, text: null })
    .add('equipment_on', to, { equipment: 'cab1', reason: 'back', text: null });

describe('the record of a cabinet', () => {
  it('is the coldest food of each look where its air was not read, and the air where it was', () => {
    const written = held()
      .read('18:00', 'A1 edge', '150')
      .read('18:02', 'A2 edge', '146')
      .read('20:00', 'A1 edge', '148');
    const book = written.book('20:30');
    const food = cabinetRecord(book, 'cab1', ms('17:00'));
    expect(food?.what).toBe('food');
    expect(food?.readings.map(({ at, value }) => [at, value])).toEqual([
      [ms('18:02'), 146],
      [ms('20:00'), 148],
    ]);
    expect(food?.limit?.degF).toBe(135);
    const air = written.air('18:00', 'cab1', '160').air('19:00', 'cab1', '161').air('20:00', 'cab1', '159');
    expect(cabinetRecord(air.book('20:30'), 'cab1', ms('17:00'))?.readings.map(({ value }) => value)).toEqual(
      [160, 161, 159],
    );
  });

  it('is none of a rack, and of a place that nobody set up', () => {
    const book = held().book('18:00');
    expect(cabinetRecord(book, 'rack', 0)).toBeNull();
    expect(cabinetRecord(book, 'nowhere', 0)).toBeNull();
    expect(cabinetRecord(book, 'walkin', 0)?.side).toBe('cold');
  });
});

describe('how often a cabinet must be looked at', () => {
  const asked = (
    written: Night,
    clock: string,
    told: { from: number; to: number; minutes: number } | null = null,
  ) => {
    const book = written.book(clock);
    const found = cabinetRecord(book, 'cab1', ms('17:00'));
    if (found === null) throw new Error('no record');
    return lookingOften(book, 'cab1', found, cabinetChart(found), told);
  };

  it('is worked out from a fall that was seen while the power was off, by hand', () => {
    const written = off(
      held().read('20:00', 'A1 edge', '160').read('22:00', 'A1 edge', '150').read('00:00', 'A1 edge', '145'),
      '21:30',
      '00:30',
    );
    const found = asked(written, '01:00');
    // Room 50: k = ln(100/95)/2 = 0.0256466, τ = 38.9915 h. From 145: 135 after τ ln(95/85) = 4.3368 h, 137 after
    // τ ln(95/87) = 3.4302 h. The house reheats within 2 h: 4.3368 + 2 − 3.4302 = 2.9066 h.
    expect(found.fall?.basis).toBe('trip');
    expect(found.fall?.tau).toBeCloseTo(38.9915, 3);
    expect(found.interval?.maxInterval).toBeCloseTo(2.9066, 3);
    // The plan looks every 4 h at most: 2.9066 / 4.
    expect(found.planHours).toBe(4);
    expect(found.chance).toBeCloseTo(0.7266, 3);
    expect(found.longest).toEqual({ from: ms('17:05'), to: ms('20:00') });
  });

  it('is worked out from a trial that somebody tells, and needs one where none was seen', () => {
    const written = held().read('20:00', 'A1 edge', '160');
    expect(asked(written, '21:00').lacks).toBe('fall');
    const told = asked(written, '21:00', { from: 150, to: 140, minutes: 60 });
    // τ = 1 / ln(100/90) = 9.4912 h; from 160 to 135 τ ln(110/85), to 137 τ ln(110/87): 0.2207 h between, and 2 h.
    expect(told.fall?.tau).toBeCloseTo(9.4912, 3);
    expect(told.interval?.maxInterval).toBeCloseTo(2.2207, 3);
  });

  it('has no answer for food that is held within the thermometer of its limit', () => {
    const near = held().read('20:00', 'A1 edge', '136.5');
    expect(asked(near, '21:00', { from: 150, to: 140, minutes: 60 }).lacks).toBe('near');
  });

  it('claims of good looks no more than they can', () => {
    const written = held().read('18:00', 'A1 edge', '150').read('20:00', 'A1 edge', '150');
    // 1 − √0.05
    expect(asked(written, '21:00').claim).toMatchObject({ looks: 2, bad: 0 });
    expect(asked(written, '21:00').claim.share).toBeCloseTo(0.7764, 4);
    expect(asked(written.read('20:30', 'A1 edge', '130'), '21:00').claim).toMatchObject({
      bad: 1,
      share: null,
    });
  });
});
