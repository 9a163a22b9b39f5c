import { xOf } from '#lib/sheet/line-geometry.ts';
import { wallClock } from '#shared/time.ts';
import css from './Axis.module.css';

type Props = { from: number; to: number; zone: string; clock: '12' | '24'; width?: number };

const hour = 3_600_000;
const steps = [1, 2, 3, 4, 6, 12, 24, 48];
const letterPx = 7.5;
const baseline = 12;

/** The hours over proof lines that share one axis. The table or the sentence beside it says the same. */
export function Axis({ from, to, zone, clock, width = 272 }: Props) {
  const room = clock === '24' ? 5 * letterPx + 12 : 8 * letterPx + 12;
  const step = steps.find((h) => ((h * hour) / Math.max(1, to - from)) * width >= room) ?? 48;
  return (
    <svg className={css.axis} width={width} height={20} viewBox={`0 0 ${width} 20`} aria-hidden="true">
      {fullHours(from, to, zone, step).map((ms) => {
        const x = xOf({ from, to }, width, ms);
        const anchor = x < room / 2 ? 'start' : x > width - room / 2 ? 'end' : 'middle';
        return (
          <g key={ms}>
            <path d={`M${x} 16v5`} className={css.tick} />
            <text x={x} y={baseline} textAnchor={anchor} className={css.words}>
              {wallClock(ms, zone, clock)}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** Instants in [from, to] at which the wall shows a full hour that divides by `step`. Zones off by half an hour too. */
export function fullHours(from: number, to: number, zone: string, step: number): number[] {
  const quarter = hour / 4;
  const found: number[] = [];
  for (let ms = Math.ceil(from / quarter) * quarter; ms <= to; ms += quarter) {
    const [h = 0, m = 0] = wallClock(ms, zone).split(':').map(Number);
    if (m === 0 && h % Math.min(step, 24) === 0) found.push(ms);
  }
  return found;
}
