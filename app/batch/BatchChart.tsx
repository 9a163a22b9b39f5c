import { useLocale, useTranslations } from 'next-intl';
import { hourTicks } from '#app/ui/hours.ts';
import { Drawn } from '#app/ui/ProofLine.tsx';
import { RuleLine } from '#app/ui/RuleLine.tsx';
import type { Line } from '#lib/fold/views.ts';
import { lineGeometry } from '#lib/sheet/line-geometry.ts';
import { wallClock } from '#shared/time.ts';
import css from './BatchChart.module.css';
import { type Chart, chart } from './chart.ts';
import { length, type Say } from './said.ts';

export type ChartLimit = { value: number; words: string; section: string };

type Props = {
  line: Line;
  limits: ChartLimit[];
  drawn: number | null; // the piece whose looks are linked
  zone: string;
  clock: '12' | '24';
  label: string; // the whole chart in one sentence
};

/** Readings against the limit, and the proof line under them on the same axis. The table beside it says the same. */
export function BatchChart(props: Props) {
  if (props.line.looks.length === 0) return null;
  return (
    <figure className={css.chart}>
      <Drawing {...props} size={phone} className={css.phone ?? ''} />
      <Drawing {...props} size={tablet} className={css.tablet ?? ''} />
    </figure>
  );
}

type Size = { width: number; top: number; height: number; bar: number; line: number; foot: number };

/** Px of the two drawings (docs/look.md: bars 14 on a phone, 20 on a page). */
const phone: Size = { width: 336, top: 34, height: 130, bar: 14, line: 190, foot: 34 };
const tablet: Size = { width: 900, top: 40, height: 220, bar: 20, line: 300, foot: 44 };

const cross = 5;
const labelLift = 9;
const letterPx = 52; // an hour's words on the axis

function Drawing({
  line,
  limits,
  drawn,
  zone,
  clock,
  label,
  size,
  className,
}: Props & { size: Size; className: string }) {
  const t = useTranslations('batch');
  const say = useTranslations('common') as unknown as Say;
  const picture = chart(
    line,
    limits.map(({ value }) => value),
    drawn,
    size,
  );
  const proof = lineGeometry(line, { width: size.width, h: size.bar, y: size.line });
  const height = size.line + 2 * size.bar + size.foot;
  return (
    <svg
      className={className}
      role="img"
      aria-label={label}
      width={size.width}
      height={height}
      viewBox={`0 0 ${size.width} ${height}`}
    >
      <Hours line={line} zone={zone} clock={clock} size={size} height={height} />
      {limits.map((limit, i) => (
        <RuleLine
          key={limit.section + limit.value}
          y={picture.limits[i] ?? 0}
          width={size.width}
          figure={limit.words}
          section={limit.section}
        />
      ))}
      {picture.drops.map(({ x, y, look }) => (
        <path
          key={`${look.at} ${look.spot} ${look.value}`}
          d={`M${x} ${y}V${size.line - cross}`}
          className={css.drop}
        />
      ))}
      {picture.links.map(({ x1, y1, x2, y2 }) => (
        <path key={`${x1} ${y1} ${x2}`} d={`M${x1} ${y1}L${x2} ${y2}`} className={css.link} />
      ))}
      <Points picture={picture} />
      {picture.gaps.map((gap) => (
        <g key={gap.from} className={css.gap}>
          <text x={gap.x + gap.width / 2} y={size.top + 4} textAnchor="middle" className={css.gapWord}>
            {t('nobody_looked')}
          </text>
          <text x={gap.x + gap.width / 2} y={size.top + 20} textAnchor="middle" className={css.gapLength}>
            {length(say, (gap.to - gap.from) / 60_000)}
          </text>
        </g>
      ))}
      {proof.paths
        .map((path, place) => ({ path, place }))
        .map(({ path, place }) => (
          <Drawn key={place} path={path} />
        ))}
      <Now line={line} zone={zone} clock={clock} size={size} />
      <Labels picture={picture} width={size.width} />
    </svg>
  );
}

function Points({ picture }: { picture: Chart }) {
  return picture.points.map(({ x, y, look }) => (
    <path
      key={`${look.at} ${look.piece} ${look.spot} ${look.value}`}
      d={`M${x - cross} ${y}H${x + cross}M${x} ${y - cross}V${y + cross}`}
      className={css.point}
    />
  ));
}

function Labels({ picture, width }: { picture: Chart; width: number }) {
  return picture.labels.map(({ x, y, look, cut }) => {
    const words = `${look.value}°`;
    const wide = words.length * 12 + 12;
    const left = Math.min(Math.max(x, wide / 2), width - wide / 2);
    if (!cut)
      return (
        <text key={look.at} x={left} y={y - labelLift} textAnchor="middle" className={css.label}>
          {words}
        </text>
      );
    const top = y + labelLift;
    return (
      <g key={look.at}>
        <path
          d={`M${left - wide / 2 + 7} ${top}H${left + wide / 2}V${top + 24}H${left - wide / 2}Z`}
          className={css.block}
        />
        <text x={left + 2} y={top + 18} textAnchor="middle" className={css.cut}>
          {words}
        </text>
      </g>
    );
  });
}

type Timed = Pick<Props, 'line' | 'zone' | 'clock'> & { size: Size };

function Now({ line, zone, clock, size }: Timed) {
  const t = useTranslations('batch');
  if (line.now === null || line.now < line.from || line.now > line.to) return null;
  const x = ((line.now - line.from) / Math.max(1, line.to - line.from)) * size.width;
  const end = x > size.width / 2;
  return (
    <>
      <path d={`M${x} ${size.top - 18}V${size.line}`} className={css.now} />
      <text
        x={end ? x - 6 : x + 6}
        y={size.top - 20}
        textAnchor={end ? 'end' : 'start'}
        className={css.nowWord}
      >
        {t('now', { time: wallClock(line.now, zone, clock) })}
      </text>
    </>
  );
}

function Hours({ line, zone, clock, size, height }: Timed & { height: number }) {
  const locale = useLocale();
  const { from, to } = line;
  const room = clock === '24' ? letterPx : letterPx * 1.5;
  return hourTicks({ from, to, zone, clock, locale }, size.width, room).map(({ at, words }) => {
    const x = ((at - from) / Math.max(1, to - from)) * size.width;
    const anchor = x < room / 2 ? 'start' : x > size.width - room / 2 ? 'end' : 'middle';
    return (
      <g key={at}>
        <path d={`M${x} ${size.top}V${height - 18}`} className={css.hour} />
        <text x={x} y={height - 4} textAnchor={anchor} className={css.hourWord}>
          {words}
        </text>
      </g>
    );
  });
}
