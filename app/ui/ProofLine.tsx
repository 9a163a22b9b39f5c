import { useTranslations } from 'next-intl';
import { type DrawnLine, type Ink, type LinePath, lineGeometry } from '#lib/sheet/line-geometry.ts';
import { wallClock } from '#shared/time.ts';
import { degrees } from '#shared/units.ts';
import css from './ProofLine.module.css';

type Props = {
  line: DrawnLine;
  /** Height of the bar: 10 row, 14 sheet and phone batch, 16 wall, 20 page. */
  height?: number;
  width?: number;
  zone: string;
  clock: '12' | '24';
  /** Write the times of the now line and of the next look under the line. */
  labels?: boolean;
  /** Whose line: read aloud before it. */
  name?: string | undefined;
};

const colours: Record<Ink, string> = {
  ink: 'var(--ink)',
  tool: 'var(--tool)',
  limit: 'var(--limit)',
  paper: 'var(--paper)',
};

/** What was seen, where nobody looked, what fell out of the limit: one line, and one sentence that says the same. */
export function ProofLine({ line, height = 10, width = 272, zone, clock, labels = false, name }: Props) {
  const said = useSaid(line, zone, clock);
  const drawn = lineGeometry(line, { width, h: height });
  return (
    <div className={css.line}>
      <svg
        role="img"
        aria-label={name ? `${name}: ${said}` : said}
        width={drawn.width}
        height={drawn.height}
        viewBox={`0 0 ${drawn.width} ${drawn.height}`}
        preserveAspectRatio="xMinYMid meet"
        className={css.svg}
      >
        {drawn.paths
          .map((path, place) => ({ path, place })) // two looks in one place are drawn alike
          .map(({ path, place }) => (
            <Drawn key={place} path={path} />
          ))}
      </svg>
      {labels ? <Labels line={line} zone={zone} clock={clock} /> : null}
    </div>
  );
}

export function Drawn({ path }: { path: LinePath }) {
  const colour = colours[path.ink];
  if (path.stroke === null) return <path d={path.d} fill={colour} />;
  return (
    <path
      d={path.d}
      fill="none"
      stroke={colour}
      strokeWidth={path.stroke}
      strokeDasharray={path.dash ?? 'none'}
    />
  );
}

function Labels({ line, zone, clock }: Pick<Props, 'line' | 'zone' | 'clock'>) {
  const t = useTranslations('parts');
  const at = (ms: number) => wallClock(ms, zone, clock);
  return (
    <p className={css.labels} aria-hidden="true">
      <span>{at(line.from)}</span>
      {line.now === null ? (
        <span>{at(line.to)}</span>
      ) : (
        <span className={css.now}>{t('line.now', { at: at(line.now) })}</span>
      )}
      {line.dueAt === null ? null : <span className={css.due}>{t('by', { time: at(line.dueAt) })}</span>}
    </p>
  );
}

/** The line in words, stretch by stretch: the text equivalent of docs/look.md 3.2. */
function useSaid(line: DrawnLine, zone: string, clock: '12' | '24'): string {
  const t = useTranslations('parts.line');
  const at = (ms: number) => wallClock(ms, zone, clock);
  const side = line.side ?? 'under';
  const out = (from: number, to: number): string => {
    const look = line.looks.find((one) => one.at === from && !one.good);
    const figure = look ? t('at_figure', { figure: `${look.value} ${degrees(look.unit)}` }) : '';
    const ended = line.looks.some((one) => one.at === to && one.good);
    return ended
      ? t('out_until', { side, from: at(from), figure, to: at(to) })
      : t('out_open', { side, from: at(from), figure });
  };
  const sentences = line.stretches.flatMap(({ kind, from, to, witness }) => {
    if (kind === 'ahead') return [];
    if (kind === 'under') return [out(from, to)];
    if (kind === 'suspect') return [t('suspect', { from: at(from) })];
    const word = kind === 'seen' && witness === 'logger' ? 'witnessed' : kind;
    return [t(word, { from: at(from), to: at(to) })];
  });
  if (line.looks.length === 0) sentences.unshift(t('empty'));
  if (line.dueAt !== null) {
    const late = line.now !== null && line.dueAt < line.now;
    sentences.push(t(late ? 'overdue' : 'due', { at: at(line.dueAt) }));
  }
  return sentences.join(' ');
}
