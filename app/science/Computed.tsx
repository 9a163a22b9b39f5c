import { useTranslations } from 'next-intl';
import type { ReactNode } from 'react';
import css from './Computed.module.css';

/** S: a computed fact with its assumption. W: may only warn. A: may only argue for discarding or looking closer. */
export type UseClass = 'S' | 'W' | 'A';

export type ComputedProps = {
  /** What the figure is of: "time below the limit". */
  words: ReactNode;
  /** The figure with its unit, already in words. */
  figure: ReactNode;
  inputs: readonly { words: ReactNode; value: ReactNode }[];
  /** As it stands in a book: "r = log10((T1 − Ta)/(T2 − Ta))/dt". */
  formula: string;
  source: ReactNode;
  use: UseClass;
  /** What it supposes, and what it does not say. */
  note?: ReactNode;
};

/** A figure that the tool worked out: opens to what went in, how, from where, and what it may be used for. */
export function Computed({ words, figure, inputs, formula, source, use, note }: ComputedProps) {
  const t = useTranslations('science.computed');
  return (
    <details className={css.computed}>
      <summary>
        <span className={css.words}>{words}</span> <span className={css.figure}>{figure}</span>
      </summary>
      <div className={css.inside}>
        {note === undefined ? null : <p>{note}</p>}
        <h4>{t('inputs')}</h4>
        <dl>
          {inputs
            .map((input, place) => ({ ...input, place }))
            .map((input) => (
              <div key={input.place}>
                <dt>{input.words}</dt>
                <dd>{input.value}</dd>
              </div>
            ))}
        </dl>
        <h4>{t('formula')}</h4>
        <p className={css.formula} translate="no">
          {formula}
        </p>
        <h4>{t('source')}</h4>
        <p>{source}</p>
        <p className={css.use}>
          <b translate="no">{use}</b> {t(`use.${use}`)}
        </p>
      </div>
    </details>
  );
}
