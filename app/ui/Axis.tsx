import { useLocale } from 'next-intl';
import { xOf } from '#lib/sheet/line-geometry.ts';
import css from './Axis.module.css';
import { hourTicks } from './hours.ts';

type Props = { from: number; to: number; zone: string; clock: '12' | '24'; width?: number };

const letterPx = 7.5;
const baseline = 12;

/**
 * The hours over proof lines that share one axis; the dates, where food lived for days. The table or the sentence
 * beside it says the same.
 */
export function Axis({ from, to, zone, clock, width = 272 }: Props) {
  const room = clock === '24' ? 5 * letterPx + 12 : 8 * letterPx + 12;
  const locale = useLocale();
  return (
    <svg className={css.axis} width={width} height={20} viewBox={`0 0 ${width} 20`} aria-hidden="true">
      {hourTicks({ from, to, zone, clock, locale }, width, room).map(({ at, words }) => {
        const x = xOf({ from, to }, width, at);
        const anchor = x < room / 2 ? 'start' : x > width - room / 2 ? 'end' : 'middle';
        return (
          <g key={at}>
            <path d={`M${x} 16v5`} className={css.tick} />
            <text x={x} y={baseline} textAnchor={anchor} className={css.words}>
              {words}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
