'use client'; // takes the focus when problems arrive
import { useTranslations } from 'next-intl';
import { useEffect, useRef } from 'react';
import css from './ErrorSummary.module.css';

export type ErrorShown = {
  label?: string | undefined;
  /** id of the field, if there is one */ field?: string | undefined;
  words: string;
};

/** All that is not right yet, at the top of a form: takes the focus, and each line leads to its field. */
export function ErrorSummary({ errors, attempt = 0 }: { errors: readonly ErrorShown[]; attempt?: number }) {
  const t = useTranslations('parts');
  const box = useRef<HTMLDivElement>(null);
  const count = errors.length;
  useEffect(() => {
    if (count > 0 && attempt >= 0) box.current?.focus(); // each attempt anew
  }, [count, attempt]);
  if (count === 0) return null;
  return (
    <div ref={box} className={css.box} role="alert" tabIndex={-1}>
      <p className={css.title}>{t('errors_title', { count })}</p>
      <ul>
        {errors.map(({ field, label, words }) => (
          <li key={`${field} ${words}`}>
            {field ? <a href={`#${field}`}>{label ? `${label}: ${words}` : words}</a> : words}
          </li>
        ))}
      </ul>
    </div>
  );
}
