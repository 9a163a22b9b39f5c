import { useTranslations } from 'next-intl';
import type { ReactNode } from 'react';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import css from './form.module.css';

type Props = {
  title: string;
  back: { href: string; words: string };
  /** Nobody writes now: the form asks for a hand first, and comes back to `next`. */
  nobody: { next: string } | null;
  children: ReactNode;
};

/** The sheet of a form that writes: its words, the way back, and whose hand is missing. */
export function FormSheet({ title, back, nobody, children }: Props) {
  const t = useTranslations('batch');
  return (
    <Sheet>
      <Headband title={title} back={back} />
      {nobody === null ? (
        children
      ) : (
        <div className={css.form}>
          <p>{t('whose_hand')}</p>
          <KeyLink href={`/sign-in?next=${encodeURIComponent(nobody.next)}`} kind="save" wide>
            {t('choose_hand')}
          </KeyLink>
        </div>
      )}
    </Sheet>
  );
}
