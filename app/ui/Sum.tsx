import type { ReactNode } from 'react';
import css from './Sum.module.css';

export type SumRow = { words: ReactNode; figure: ReactNode; note?: ReactNode };

/** Word left, figure right; the last line stands over a double line. The lines are never added up. */
export function Sum({ rows }: { rows: readonly SumRow[] }) {
  return (
    <dl className={css.sum}>
      {rows
        .map((row, place) => ({ ...row, place }))
        .map((row) => (
          <div key={row.place} className={css.row}>
            <dt>{row.words}</dt>
            <dd>
              {row.note ? <span className={css.note}>{row.note}</span> : null}
              <span className={css.figure}>{row.figure}</span>
            </dd>
          </div>
        ))}
    </dl>
  );
}
