'use client'; // a part of a form
import dynamic from 'next/dynamic';
import { useTranslations } from 'next-intl';
import { type ComponentProps, useState } from 'react';
import type { Body } from '#shared/entries/entry.ts';
import css from './LimitsPick.module.css';
import { LimitsPick } from './LimitsPick.tsx';

const FoundFigures = dynamic(() => import('./FoundFigures.tsx'), { ssr: false, loading: Loading });

function Loading() {
  const t = useTranslations('limits.pick');
  return <p role="status">{t('loading')}</p>;
}

type Props = Omit<ComponentProps<typeof LimitsPick>, 'children' | 'hint'> & {
  made: readonly Body<'limits'>[];
};

/** Which limits count for a site, with all figures of the chosen ones on request. */
export function SiteLimits({ made, ...pick }: Props) {
  const t = useTranslations('limits.pick');
  const [shown, setShown] = useState(false);
  return (
    <LimitsPick {...pick} hint={t('hint')}>
      <details onToggle={(event) => setShown(event.currentTarget.open)}>
        <summary className={css.open}>{t('figures')}</summary>
        {shown && pick.chosen !== '' ? <FoundFigures id={pick.chosen} made={made} /> : null}
      </details>
    </LimitsPick>
  );
}
