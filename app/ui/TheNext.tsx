import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { ReactNode } from 'react';
import { By } from './By.tsx';
import css from './TheNext.module.css';

export type NextShown = { words: ReactNode; note?: ReactNode; by?: string | undefined; href: string };

/** The next action, worst first: plain bordered strips, each a way to where it is done. */
export function TheNext({ items }: { items: readonly NextShown[] }) {
  const t = useTranslations('parts');
  if (items.length === 0) return null;
  return (
    <nav className={css.next} aria-label={t('the_next')}>
      {items
        .map((item, place) => ({ ...item, place }))
        .map((item) => (
          <Link key={item.place} href={item.href} className={css.strip} prefetch={false}>
            <span className={css.what}>
              <span className={css.words}>{item.words}</span>
              {item.note ? <span className={css.note}>{item.note}</span> : null}
            </span>
            {item.by ? <By time={item.by} size="next" /> : null}
          </Link>
        ))}
    </nav>
  );
}
