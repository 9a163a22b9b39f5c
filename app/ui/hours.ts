import { wallClock } from '#shared/time.ts';

const hour = 3_600_000;
/** Hours between two words on an axis; from a day on they are dates. */
const steps = [1, 2, 3, 4, 6, 12, 24, 48, 96, 168, 336];

type Axis = { from: number; to: number; zone: string; clock: '12' | '24'; locale: string };

/**
 * The words of an axis of time: full hours of the kitchen's clock, or the dates where food lived for days.
 * @param width of the axis, px
 * @param room that one word asks, px
 */
export function hourTicks(axis: Axis, width: number, room: number): { at: number; words: string }[] {
  const { from, to, zone, clock, locale } = axis;
  const step = steps.find((h) => ((h * hour) / Math.max(1, to - from)) * width >= room) ?? 336;
  const date = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', timeZone: zone });
  return fullHours(from, to, zone, step).map((at) => ({
    at,
    words: step < 24 ? wallClock(at, zone, clock) : date.format(at),
  }));
}

/**
 * Instants (ms) in [from, to] at which the wall shows a full hour that divides by `step`, or of a step of several
 * days every so many midnights. Zones off by half an hour too.
 */
export function fullHours(from: number, to: number, zone: string, step: number): number[] {
  const quarter = hour / 4;
  const found: number[] = [];
  for (let ms = Math.ceil(from / quarter) * quarter; ms <= to; ms += quarter) {
    const [h = 0, m = 0] = wallClock(ms, zone).split(':').map(Number);
    if (m === 0 && h % Math.min(step, 24) === 0) found.push(ms);
  }
  return found.filter((_, at) => at % Math.max(1, step / 24) === 0);
}
