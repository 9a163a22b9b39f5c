import { describe, expect, it } from 'vitest';
import { type CoolingOutlook, coolingOutlook, slabHours } from '#lib/between/cooling.ts';
import { reheatWay } from '#lib/between/reheat.ts';
import { ms, type Night, night } from '../fold/night.ts';

const cooling = (details = {}): Night =>
  night().batch('19:00', 'P', 2, 'brisket').step('20:00', 'P', 'cooling', 'cooler1', null, details);

const outlook = (written: Night, clock: string): CoolingOutlook => {
  const book = written.book(clock);
  const run = book.batches.get('P')?.runs[0];
  const found = run === undefined ? null : coolingOutlook(book, run);
  if (found === null) throw new Error('no outlook');
  return found;
};
const first = (found: CoolingOutlook) => {
  const target = found.targets.find(({ stage }) => stage === 'stage_1');
  if (target === undefined) throw new Error('no first stage');
  return target;
};

const deepPan = { pan_depth_in: 6, covered: true, cooler_F: 40 };
const thinPan = { pan_depth_in: 2, covered: false, cooler_F: 38 };

describe('a cooling that will fail', () => {
  it('is warned of in the first half hour, from the depth of the pan alone', () => {
    // A slab of 6 in in air of 40 °F at 10 W/m²K: Bi 1.524, a tenth in 27 h, 140 to 70 °F in 16 h.
    expect(slabHours(140, 40, 70, 6, 10)).toBeCloseTo(16, 0);
    const target = first(outlook(cooling(deepPan).read('20:00', 'P1 core', '140'), '20:05'));
    expect(target.expected).toMatchObject({ say: 'range', by: 'depth' });
    expect(target.standing).toBe('probably_misses');
    expect(target.deadline).toBe(ms('22:00'));
  });

  it('is warned of by its readings', () => {
    const written = cooling(deepPan)
      .read('20:00', 'P1 core', '140')
      .read('20:30', 'P1 core', '137')
      .read('21:00', 'P1 core', '130');
    expect(first(outlook(written, '21:00')).standing).toBe('probably_misses');
  });

  it('says by when a reheat has to be begun, and to what', () => {
    const book = cooling(deepPan)
      .read('20:00', 'P1 core', '140')
      .read('20:30', 'P1 core', '137')
      .book('20:40');
    const run = book.batches.get('P')?.runs[0];
    const found = run === undefined ? null : coolingOutlook(book, run);
    expect(found === null ? null : reheatWay(book, found)).toEqual({
      startBy: ms('22:30'), // two hours after the last reading at or above 135 °F
      to: { value: 165, unit: 'degF' },
      section: '3-403.11(A)',
      withinMin: 120,
    });
  });

  it('offers no reheat once the first stage is over', () => {
    const book = cooling(deepPan)
      .read('20:00', 'P1 core', '140')
      .read('20:30', 'P1 core', '134')
      .book('22:30');
    const run = book.batches.get('P')?.runs[0];
    const found = run === undefined ? null : coolingOutlook(book, run);
    expect(found === null ? null : reheatWay(book, found)).toBeNull();
  });
});

describe('a cooling that just makes it', () => {
  /** 38 + 97·10^(−t/3.98): 135 at 20:00, 110.6 at 20:30, 92.4 at 21:00, 78.8 at 21:30, 70.0 at 21:55. */
  const written = cooling(thinPan)
    .read('20:00', 'P1 core', '135')
    .read('20:30', 'P1 core', '110.6')
    .read('21:00', 'P1 core', '92.4')
    .read('21:30', 'P1 core', '78.8');

  it('has the true time inside its range, and the deadline beside it', () => {
    const target = first(outlook(written, '21:31'));
    if (target.expected.say !== 'range') throw new Error('no range');
    expect(target.expected.by).toBe('readings');
    expect(target.expected.earliest).toBeLessThan(ms('21:55'));
    expect(target.expected.latest ?? 0).toBeGreaterThan(ms('21:55'));
    expect(target.deadline).toBe(ms('22:00'));
    expect(['may_miss', 'nothing_to_warn_of']).toContain(target.standing);
  });

  it('gives the rate of the last two readings: log10((92.4 − 38)/(78.8 − 38))/0.5 h', () => {
    expect(outlook(written, '21:31').rate?.rate).toBeCloseTo(Math.log10(54.4 / 40.8) / 0.5, 9);
  });
});

describe('what a forecast rests on', () => {
  it('begins anew when the food is moved', () => {
    const written = cooling(thinPan)
      .read('20:00', 'P1 core', '135')
      .read('20:30', 'P1 core', '120')
      .step('20:40', 'P', 'cooling', 'bath')
      .read('20:45', 'P1 core', '118');
    const found = outlook(written, '20:50');
    expect(found.since).toBe(ms('20:40'));
    expect(found.readings.map(({ value }) => value)).toEqual([118]);
  });

  it('shows no time from readings that do not fit one undisturbed cooling', () => {
    const written = cooling(thinPan)
      .read('20:00', 'P1 core', '135')
      .read('20:30', 'P1 core', '90')
      .read('21:00', 'P1 core', '120');
    expect(first(outlook(written, '21:00')).expected).toEqual({ say: 'does_not_fit' });
  });

  it('goes by a plain curve where only the first reading past the lag is off, and only in air that is known', () => {
    // 38 + 97·e^(−0.6 t) from 20:00: 109.9 at 20:30, written as 118, then 99.9, 91.2, 83.8, 77.4 each quarter hour.
    const expected = (depth: number) => {
      const book = night()
        .batch('19:00', 'P', 1, 'brisket')
        .step('19:05', 'P', 'hot_hold', 'cab1')
        .read('19:55', 'P1 core', '136')
        .step('20:00', 'P', 'cooling', 'cooler1', null, { ...thinPan, pan_depth_in: depth })
        .read('20:30', 'P1 core', '118')
        .read('20:45', 'P1 core', '99.9')
        .read('21:00', 'P1 core', '91.2')
        .read('21:15', 'P1 core', '83.8')
        .read('21:30', 'P1 core', '77.4')
        .book('21:31');
      const run = book.batches.get('P')?.runs.at(-1);
      const found = run === undefined ? null : coolingOutlook(book, run);
      return found?.targets.find(({ stage }) => stage === 'stage_1')?.expected;
    };
    const found = expected(2);
    expect(found).toMatchObject({ say: 'range', by: 'plain_curve' });
    // At 70 °F after ln(97/32)/0.6 = 1.848 h: 21:51.
    expect(found?.say === 'range' && found.earliest < ms('21:51')).toBe(true);
    expect(found?.say === 'range' && (found.latest ?? 0) > ms('21:51')).toBe(true);
    // Six inches are not past their lag at 20:30: 0.2 · 0.0762²/1.4e-7 s = 2.3 h.
    expect(expected(6)).toEqual({ say: 'does_not_fit' });
  });

  it('shows no time where nobody said how cold the air is', () => {
    const written = cooling().read('20:00', 'P1 core', '135').read('20:30', 'P1 core', '110');
    expect(first(outlook(written, '20:31')).expected).toEqual({ say: 'air_unknown' });
  });

  it('says that air of 41 °F never brings food to 41 °F', () => {
    const written = cooling({ cooler_F: 41 }).read('20:00', 'P1 core', '135').read('20:30', 'P1 core', '110');
    const total = outlook(written, '20:31').targets.find(({ stage }) => stage === 'total');
    expect(total?.expected).toEqual({ say: 'air_may_not_get_there' });
    expect(total?.standing).toBe('probably_misses');
  });

  it('takes the warmest piece', () => {
    const written = cooling(thinPan)
      .read('20:00', 'P1 core', '135')
      .read('20:06', 'P2 core', '135')
      .read('20:30', 'P1 core', '100')
      .read('20:36', 'P2 core', '115');
    expect(outlook(written, '20:40').piece).toBe(2);
  });
});

describe('what can still be done', () => {
  const slow = cooling({ pan_depth_in: 2, covered: true, cooler_F: 38 })
    .read('20:00', 'P1 core', '135')
    .read('20:20', 'P1 core', '128');

  it('closes the slower way before the quicker one, and every way before the deadline', () => {
    const { ways } = outlook(slow, '20:25');
    const start = (name: string) => ways.find(({ way }) => way === name)?.lastStart ?? null;
    const bath = start('ice_bath');
    expect(bath).not.toBeNull();
    expect(bath ?? 0).toBeLessThan(ms('22:00'));
    expect(start('blast_chiller') ?? 0).toBeLessThan(bath ?? 0);
  });

  it('leaves shallow pans in ice where a deep pan has just been put away and no way alone is quick enough', () => {
    const { ways } = outlook(cooling(deepPan).read('20:00', 'P1 core', '138'), '20:10');
    const start = (name: string) => ways.find(({ way }) => way === name)?.lastStart;
    for (const alone of ['shallower', 'ice_bath', 'blast_chiller'])
      expect([alone, start(alone)]).toEqual([alone, null]);
    // Two inches at √(100 · 300) = 173 W/m²K: Bi 8.8, μ 1.41, C 1.25; (70 − 32)/(138 − 32) after Fo 0.63: 48 min.
    const ice = ways.find(({ way }) => way === 'shallow_ice');
    expect(ice?.hours ?? 0).toBeCloseTo(0.8, 1);
    expect(ice?.lastStart ?? 0).toBeGreaterThan(ms('21:05'));
    expect(ice?.lastStart ?? 0).toBeLessThan(ms('21:20'));
  });

  it('says that a way is too late when it is', () => {
    const late = outlook(slow, '21:50').ways.find(({ way }) => way === 'blast_chiller');
    expect(late?.lastStart).toBeNull();
  });

  it('asks for the second reading half an hour after the first', () => {
    const one = outlook(cooling(thinPan).read('20:00', 'P1 core', '135'), '20:05');
    expect(one.next).toEqual({ at: ms('20:30'), why: 'learn_the_rate' });
  });

  it('asks for the next before the last way closes', () => {
    const found = outlook(slow, '20:25');
    const last = Math.max(...found.ways.flatMap(({ lastStart }) => lastStart ?? []));
    expect(found.next?.at).toBeLessThanOrEqual(last - 10 * 60_000);
  });
});
