import { AxisBottom, AxisLeft } from '@visx/axis';
import { scaleLinear } from '@visx/scale';
import { Area, LinePath } from '@visx/shape';
import { useLocale } from 'next-intl';
import type { ReactNode } from 'react';
import { hourTicks } from '#app/ui/hours.ts';
import { RuleLine } from '#app/ui/RuleLine.tsx';
import css from './Chart.module.css';

export type At = { x: number; y: number };

/** Crosses are what a hand read; a plain line joins figures; a dashed one is what the tool worked out. */
export type Series = { key: string; drawn: 'crosses' | 'line' | 'dashed'; points: readonly At[] };

/** Two dashed edges, never filled: what the tool expects lies between them. */
export type Band = { key: string; points: readonly { x: number; low: number; high: number }[] };

export type ChartProps = {
  /** The whole chart in one sentence. */
  label: string;
  /** Instants (ms) on the kitchen's clock, or plain numbers with their unit in words. */
  x:
    | { from: number; to: number; zone: string; clock: '12' | '24'; words?: string }
    | { from: number; to: number; words: string };
  /** `words` name what is drawn and its unit: "core, °F". */
  y: { from: number; to: number; words: string };
  /** Of a rule: value, its figure in words, its section. */
  limits?: readonly { value: number; words: string; section: string }[];
  /** Plain level lines of the tool: a mean, a control limit. */
  levels?: readonly { value: number; words: string }[];
  /** Moments: now, a deadline. */
  posts?: readonly { x: number; words: string; voice: 'tool' | 'rule' }[];
  series?: readonly Series[];
  bands?: readonly Band[];
  /** Says the same as the picture; it is beside it for who reads with the keys or aloud, and on paper. */
  table: { title: string; head: readonly string[]; rows: readonly (readonly ReactNode[])[] };
};

type Size = { width: number; height: number; left: number; right: number; top: number; foot: number };

/** Px of the two drawings. */
const phone: Size = { width: 336, height: 250, left: 40, right: 8, top: 30, foot: 46 };
const wide: Size = { width: 900, height: 340, left: 56, right: 16, top: 34, foot: 50 };

/** Readings or forecast against their limits: axes with units, the rule with its section, the same as a table. */
export function Chart(props: ChartProps) {
  return (
    <figure className={css.chart}>
      <Drawing {...props} size={phone} className={css.phone ?? ''} />
      <Drawing {...props} size={wide} className={css.wide ?? ''} />
      <Table {...props.table} />
    </figure>
  );
}

function Table({ title, head, rows }: ChartProps['table']) {
  return (
    <details className={css.beside}>
      <summary>{title}</summary>
      <div className={css.scroll}>
        <table>
          <thead>
            <tr>
              {head.map((words) => (
                <th key={words} scope="col">
                  {words}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows
              .map((cells, place) => ({ cells, place })) // two rows may say the same
              .map(({ cells, place }) => (
                <tr key={place}>
                  {cells.map((cell, column) => (
                    <td key={head[column] ?? column}>{cell}</td>
                  ))}
                </tr>
              ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

const cross = 5;
const postRows = 3; // words of posts that stand near one another are under one another
const letterPx = { '24': 52, '12': 78 } as const;

function Drawing({
  label,
  x,
  y,
  limits = [],
  levels = [],
  posts = [],
  series = [],
  bands = [],
  size,
  className,
}: ChartProps & { size: Size; className: string }) {
  const locale = useLocale();
  const inner = { right: size.width - size.right, bottom: size.height - size.foot };
  const across = scaleLinear<number>({ domain: [x.from, x.to], range: [size.left, inner.right] });
  const up = scaleLinear<number>({ domain: [y.from, y.to], range: [inner.bottom, size.top] });
  const px = ({ x: at }: { x: number }): number => across(at);
  return (
    <svg
      className={className}
      role="img"
      aria-label={label}
      width={size.width}
      height={size.height}
      viewBox={`0 0 ${size.width} ${size.height}`}
    >
      <AxisLeft
        scale={up}
        left={size.left}
        numTicks={5}
        tickLength={5}
        stroke="currentColor"
        tickStroke="currentColor"
        tickLabelProps={{ className: css.tick ?? '', textAnchor: 'end', dx: -3, dy: '0.32em' }}
      />
      <AxisBottom
        scale={across}
        top={inner.bottom}
        tickLength={5}
        stroke="currentColor"
        tickStroke="currentColor"
        {...ticksOf(x, inner.right - size.left, locale)}
        tickLabelProps={{ className: css.tick ?? '', textAnchor: 'middle' }}
      />
      <text x={2} y={14} className={css.unit}>
        {y.words}
      </text>
      <text x={inner.right} y={size.height - 4} textAnchor="end" className={css.unit}>
        {x.words ?? ''}
      </text>
      {limits.map(({ value, words, section }) => (
        <g key={`${value} ${section}`} transform={`translate(${size.left + 1} 0)`}>
          <RuleLine y={up(value)} width={inner.right - size.left} figure={words} section={section} />
        </g>
      ))}
      {[...posts]
        .sort((a, b) => a.x - b.x)
        .map(({ x: at, words, voice }, place) => (
          <Post
            key={`${at} ${words}`}
            at={across(at)}
            words={words}
            voice={voice}
            top={size.top + (place % postRows) * 17}
            bottom={inner.bottom}
            middle={(size.left + inner.right) / 2}
          />
        ))}
      {bands.map(({ key, points }) => (
        <Area key={key} data={[...points]} x={px} y0={({ low }) => up(low)} y1={({ high }) => up(high)}>
          {({ path }) => <path d={path([...points]) ?? ''} className={css.band} />}
        </Area>
      ))}
      {series.map(({ key, drawn, points }) =>
        drawn === 'crosses' ? (
          points.map((point) => (
            <path
              key={`${key} ${point.x} ${point.y}`}
              d={`M${px(point) - cross} ${up(point.y)}h${2 * cross}M${px(point)} ${up(point.y) - cross}v${2 * cross}`}
              className={css.cross}
            />
          ))
        ) : (
          <LinePath
            key={key}
            data={[...points]}
            x={px}
            y={({ y: value }) => up(value)}
            className={(drawn === 'line' ? css.line : css.dashed) ?? ''}
            fill="none"
          />
        ),
      )}
      {levels.map(({ value, words }) => (
        <g key={`${value} ${words}`} className={css.level}>
          <path d={`M${size.left} ${up(value)}H${inner.right}`} />
          <text x={inner.right} y={up(value) - 4} textAnchor="end">
            {words}
          </text>
        </g>
      ))}
    </svg>
  );
}

/** Full hours of the kitchen's clock, or what the scale finds round. */
function ticksOf(x: ChartProps['x'], width: number, locale: string) {
  if (!('zone' in x)) return { numTicks: 5 };
  const words = new Map(
    hourTicks({ ...x, locale }, width, letterPx[x.clock]).map((tick) => [tick.at, tick.words]),
  );
  return {
    tickValues: [...words.keys()],
    tickFormat: (at: { valueOf: () => number }) => words.get(at.valueOf()) ?? '',
  };
}

type PostProps = {
  at: number;
  words: string;
  voice: 'tool' | 'rule';
  top: number;
  bottom: number;
  middle: number;
};

function Post({ at, words, voice, top, bottom, middle }: PostProps) {
  const before = at > middle;
  return (
    <g className={voice === 'tool' ? css.toolPost : css.rulePost}>
      <path d={`M${at} ${top - 12}V${bottom}`} />
      <text x={before ? at - 5 : at + 5} y={top - 2} textAnchor={before ? 'end' : 'start'}>
        {words}
      </text>
    </g>
  );
}
