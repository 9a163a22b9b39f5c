import type { Span } from '#lib/between/off.ts';
import css from './LevelLine.module.css';

export type LevelPart = Span & { kind: 'witnessed' | 'above' | 'below' | 'not_shown' | 'inconsistent' };

type Props = {
  from: number;
  to: number;
  looks: readonly number[];
  parts: readonly LevelPart[];
  label: string;
};

const width = 640;
const top = 9;
const bar = 12;

/**
 * One level of proof on the time of the hold. Filled is witnessed by a record; a dashed frame is what the tool worked
 * out of the core; fallen and dashed is the core below; ticks are looks. Nothing here looks like a seen stretch.
 */
export function LevelLine({ from, to, looks, parts, label }: Props) {
  const x = (at: number): number => ((at - from) / Math.max(1, to - from)) * width;
  return (
    <svg
      role="img"
      aria-label={label}
      className={css.line}
      viewBox={`0 0 ${width} 36`}
      preserveAspectRatio="none"
    >
      <path d={`M0 ${top + bar}H${width}`} className={css.axis} />
      {parts.map(({ kind, from: start, to: end }) => (
        <path
          key={`${kind} ${start}`}
          d={outline(kind, x(start), Math.max(x(end), x(start) + 2))}
          className={css[kind]}
        />
      ))}
      {looks.map((at) => (
        <path key={at} d={`M${x(at)} 1v${top + bar - 1}`} className={css.tick} />
      ))}
    </svg>
  );
}

function outline(kind: LevelPart['kind'], a: number, b: number): string {
  if (kind === 'not_shown') return '';
  if (kind === 'below') return `M${a} ${top + bar + 2}H${b}V${top + 2 * bar + 2}H${a}Z`;
  if (kind === 'inconsistent') return `M${a} ${top}L${b} ${top + bar}M${a} ${top + bar}L${b} ${top}`;
  return `M${a} ${top}H${b}V${top + bar}H${a}Z`;
}
