import { useTranslations } from 'next-intl';
import css from './Tag.module.css';

/** A numbered tag that ties an exception to its line. */
export function Tag({ number }: { number: number }) {
  const t = useTranslations('parts');
  return (
    <span className={css.tag} role="img" aria-label={t('tag', { number })}>
      <span aria-hidden="true">{number}</span>
    </span>
  );
}
