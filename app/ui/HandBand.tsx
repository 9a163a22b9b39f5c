import Link from 'next/link';
import { useTranslations } from 'next-intl';
import type { ReactNode } from 'react';
import css from './HandBand.module.css';

export type HandShown = { initials: string; name: string };
type Props = {
  left: ReactNode;
  hand: HandShown;
  onChange?: (() => void) | undefined;
  href?: string | undefined;
};

/** The band with whose hand writes, changed in two taps: by `onChange`, or by going to `href`. */
export function HandBand({ left, hand, onChange, href }: Props) {
  const t = useTranslations('parts');
  const label = t('hand_writes', { name: hand.name });
  const inside = (
    <>
      <span className={css.initials}>{hand.initials}</span>
      <span>
        <span className={css.name}>{hand.name}</span>
        <span className={css.change}>{t('change_hand')}</span>
      </span>
    </>
  );
  return (
    <header className={css.band}>
      <div className={css.left}>{left}</div>
      {href ? (
        <Link href={href} className={css.hand} aria-label={label}>
          {inside}
        </Link>
      ) : (
        <button type="button" className={css.hand} onClick={onChange} aria-label={label}>
          {inside}
        </button>
      )}
    </header>
  );
}
