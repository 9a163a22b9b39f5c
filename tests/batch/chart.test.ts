import { describe, expect, test } from 'vitest';
import { chart } from '#app/batch/chart.ts';
import type { Line } from '#lib/fold/views.ts';

const hour = 3_600_000;
const box = { width: 100, top: 0, height: 100 };
const look = (at: number, value: number, over: Partial<Line['looks'][number]> = {}) => ({
  at: at * hour,
  value,
  unit: 'degF' as const,
  spot: 'edge' as const,
  piece: 3,
  good: value >= 135,
  suspect: false,
  ...over,
});
const stretch = (kind: Line['stretches'][number]['kind'], from: number, to: number) => ({
  kind,
  from: from * hour,
  to: to * hour,
});

/** A night of ten hours: looks at 0, 2 and 4, nobody until 7, then 131, a good look at 8 and at 10. */
const night = {
  from: 0,
  to: 10 * hour,
  looks: [look(0, 163), look(2, 154), look(4, 149), look(7, 131), look(8, 138), look(10, 144)],
  stretches: [
    stretch('seen', 0, 2),
    stretch('seen', 2, 4),
    stretch('nobody_looked', 4, 7),
    stretch('under', 7, 8),
    stretch('seen', 8, 10),
  ],
};

describe('the chart of a batch', () => {
  test('seen readings are joined; nothing crosses a stretch in which nobody looked, or one under the limit', () => {
    expect(chart(night, [135], 3, box).links.map(({ x1, x2 }) => [x1, x2])).toEqual([
      [0, 20],
      [20, 40],
      [80, 100],
    ]);
  });

  test('lettered are the first, the last before the gap, the one under the limit and the newest', () => {
    const { labels } = chart(night, [135], 3, box);
    expect(labels.map(({ look, cut }) => [look.value, cut])).toEqual([
      [163, false],
      [149, false],
      [131, true],
      [144, false],
    ]);
  });

  test('of figures that would lie over one another the newer stands, and one out of the limit always', () => {
    const close = {
      ...night,
      looks: [look(0, 150), look(4, 149), look(4.2, 132), look(4.3, 131), look(9.8, 150.5), look(10, 150)],
      stretches: [stretch('under', 4.2, 4.3), stretch('nobody_looked', 9.8, 10)],
    };
    const values = (width: number) =>
      chart(close, [135], 3, { ...box, width }).labels.map((each) => each.look.value);
    expect(values(1000)).toEqual([150, 132, 131, 150]); // 0.2 h are 20 px
    expect(values(4000)).toEqual([150, 132, 131, 150.5, 150]); // 0.2 h are 80 px
  });

  test('a figure out of the limit is lettered for any piece; one that proves nothing is not cut', () => {
    const looks = [
      ...night.looks.filter(({ value }) => value !== 131),
      look(7, 130, { piece: 5 }),
      look(9, 133, { good: false }),
    ];
    const { labels } = chart({ ...night, looks }, [135], 3, box);
    expect(labels.filter(({ cut }) => cut).map((each) => each.look.value)).toEqual([130]);
  });

  test('the limit lies in the picture, warmer is higher, and 4 degrees are free above and below', () => {
    // From 131 − 4 = 127 to 163 + 4 = 167: 40 degrees over 100 px, so 135 lies at (167 − 135) / 40 × 100 = 80.
    const drawn = chart(night, [135], 3, box);
    expect(drawn.limits).toEqual([80]);
    expect(drawn.points[0]?.y).toBe(10);
    expect(drawn.points[3]?.y).toBe(90);
  });

  test('another piece, and another spot of the same piece, are not joined to it', () => {
    const looks = [look(0, 150), look(1, 160, { spot: 'core' }), look(2, 149), look(1, 151, { piece: 4 })];
    const both = { ...night, looks, stretches: [stretch('seen', 0, 2)] };
    expect(chart(both, [135], 3, box).links).toHaveLength(1);
    expect(chart(both, [135], 3, box).points).toHaveLength(4);
  });

  test('a gap is named where it is wide enough for words', () => {
    const wide = { ...box, width: 400 };
    expect(chart(night, [135], 3, wide).gaps).toEqual([{ x: 160, width: 120, from: 4 * hour, to: 7 * hour }]);
    expect(chart(night, [135], 3, box).gaps).toEqual([]);
  });

  test('a batch that nobody has read yet has a limit and no points', () => {
    const empty = chart({ ...night, looks: [], stretches: [] }, [135], null, box);
    expect(empty.points).toEqual([]);
    expect(empty.limits).toEqual([50]);
  });
});
