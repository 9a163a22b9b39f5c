import { useTranslations } from 'next-intl';
import type { ReactNode } from 'react';
import { Headband } from './Headband.tsx';
import { KeyLink } from './KeyLink.tsx';
import css from './Lost.module.css';
import { Sheet } from './Sheet.tsx';

type Props = { why: 'no_page' | 'fault'; children?: ReactNode };

/** Where a page should be and none is: what that means for the book, what can be done, and the way back. */
export function Lost({ why, children }: Props) {
  const t = useTranslations(`parts.${why}`);
  return (
    <Sheet>
      <Headband title={t('title')} />
      <main className={css.lost}>
        <p>{t('help')}</p>
        {children}
        <KeyLink href="/" wide>
          {t('kitchen')}
        </KeyLink>
      </main>
    </Sheet>
  );
}
