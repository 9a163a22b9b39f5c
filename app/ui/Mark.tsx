import { useTranslations } from 'next-intl';
import { type MarkPath, type MarkWord, markBox, markPaths } from '#lib/sheet/mark-paths.ts';
import css from './Mark.module.css';

export type MarkSize = 'row' | 'page' | 'wall';

const viewBox = `0 0 ${markBox.width} ${markBox.height}`;

/** The drawing of a verdict or a state. Beside its word it is silent; `alone` it says the word itself. */
export function Mark({
  word,
  size = 'row',
  alone = false,
}: {
  word: MarkWord;
  size?: MarkSize;
  alone?: boolean;
}) {
  const t = useTranslations('parts.mark');
  if (!alone) return <Drawing paths={markPaths[word]} size={size} />;
  return (
    <svg className={`${css.mark} ${css[size]}`} viewBox={viewBox} role="img" aria-label={t(word)}>
      <Paths paths={markPaths[word]} />
    </svg>
  );
}

/** Paths in the box of 36 × 18, in the ink of the words around them; silent. */
export function Drawing({ paths, size }: { paths: readonly MarkPath[]; size: MarkSize }) {
  return (
    <svg className={`${css.mark} ${css[size]}`} viewBox={viewBox} aria-hidden="true">
      <Paths paths={paths} />
    </svg>
  );
}

function Paths({ paths }: { paths: readonly MarkPath[] }) {
  return paths.map(({ d, stroke, dash }) =>
    stroke === null ? (
      <path key={d} d={d} fill="currentColor" />
    ) : (
      <path
        key={d}
        d={d}
        fill="none"
        stroke="currentColor"
        strokeWidth={stroke}
        strokeDasharray={dash ?? 'none'}
      />
    ),
  );
}
