import type { CoolingOutlook } from '#lib/between/cooling.ts';

type Anchor = { x: number; y: number };

/**
 * °F along anchors in order of time, each stretch toward the air as cooling goes; past the last one on at its last
 * rate. One anchor alone stays where it is: nothing is known of its way.
 */
export function along(anchors: readonly Anchor[], air: number): (x: number) => number {
  return (x) => {
    const next = anchors.findIndex((one) => one.x >= x);
    const end = next < 0 ? anchors.length - 1 : Math.max(1, next);
    const [a, b] = [anchors[end - 1], anchors[end]];
    if (a === undefined || b === undefined || b.x <= a.x) return (b ?? a ?? { y: air }).y;
    const left = (b.y - air) / (a.y - air);
    return left <= 0 ? b.y : air + (a.y - air) * left ** ((x - a.x) / (b.x - a.x));
  };
}

const samples = 32;

/** The band that the forecast lies in, from the last reading to `to`; [] where no range is known. */
export function bandOf(
  { readings, targets, air }: CoolingOutlook,
  to: number,
): { x: number; low: number; high: number }[] {
  const last = readings.at(-1);
  if (last === undefined || air === null || to <= last.at) return [];
  const start = { x: last.at, y: last.value };
  const ranges = targets
    .flatMap(({ expected, to: y }) =>
      expected.say === 'range' && y < last.value ? [{ ...expected, y }] : [],
    )
    .sort((a, b) => b.y - a.y);
  if (ranges.length === 0) return [];
  const after = (x: number): number => Math.max(x, last.at + 1);
  const quick = along([start, ...ranges.map(({ earliest, y }) => ({ x: after(earliest), y }))], air.value);
  const slow = along(
    [start, ...ranges.flatMap(({ latest, y }) => (latest === null ? [] : [{ x: after(latest), y }]))],
    air.value,
  );
  return Array.from({ length: samples + 1 }, (_, i) => {
    const x = last.at + ((to - last.at) * i) / samples;
    const [low, high] = [quick(x), slow(x)];
    return { x, low: Math.min(low, high), high: Math.max(low, high) };
  });
}
