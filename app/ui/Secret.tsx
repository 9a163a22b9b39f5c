import { useTranslations } from 'next-intl';
import css from './Secret.module.css';

type Props = {
  /** How many figures it has at least. */
  length: number;
  typed: number;
  state?: 'typing' | 'wrong' | 'shut';
  /** What went wrong, and how many tries are left. */
  words?: string | undefined;
};

/** How much of a secret is typed. No figure is ever shown. */
export function Secret({ length, typed, state = 'typing', words }: Props) {
  const t = useTranslations('parts');
  const squares = Math.max(length, typed);
  const width = squares * 42 - 10;
  return (
    <div className={css.secret}>
      <div className={`${css.row} ${state === 'typing' ? '' : css.stopped}`}>
        <svg
          role="img"
          aria-label={t('secret', { typed, length })}
          width={width}
          height={40}
          viewBox={`0 0 ${width} 40`}
          className={css.squares}
        >
          {Array.from({ length: squares }, (_, place) => square(place, place < typed))}
        </svg>
        <span className={css.count} aria-hidden="true">
          {t('secret_count', { typed, length })}
        </span>
      </div>
      {words ? (
        <p className={css.words} role="alert">
          {words}
        </p>
      ) : null}
    </div>
  );
}

const square = (place: number, filled: boolean) =>
  filled ? (
    <path key={place} d={`M${place * 42} 4h32v30h-32z`} fill="currentColor" />
  ) : (
    <path key={place} d={`M${place * 42} 33h32`} stroke="currentColor" strokeWidth="3" />
  );
