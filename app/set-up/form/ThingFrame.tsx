'use client'; // sends a form
import { useTranslations } from 'next-intl';
import type { FormEventHandler, ReactNode } from 'react';
import { type ErrorShown, ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { Foot } from '#app/ui/Foot.tsx';
import { Key } from '#app/ui/Key.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import { SignInLink } from '../SignInLink.tsx';
import css from './ThingFrame.module.css';

type Props = {
  submit: FormEventHandler;
  errors: readonly ErrorShown[];
  attempt: number;
  busy: boolean;
  saved: boolean;
  /** The book wants a secret first: what was typed waits here. */
  wantsSignIn: boolean;
  /** Why this hand cannot save, in words. */
  cannot: string | null;
  /** Why there is nothing to save yet, in words. */
  notYet?: string | null;
  back: string;
  /** What the save key says, where it is not "save". */
  save?: string | undefined;
  children: ReactNode;
};

/** A form of the set-up: problems above, fields, the save key at the thumb. */
export function ThingFrame({
  submit,
  errors,
  attempt,
  busy,
  saved,
  wantsSignIn,
  cannot,
  notYet = null,
  back,
  save,
  children,
}: Props) {
  const t = useTranslations('common');
  const s = useTranslations('setup');
  return (
    <form noValidate onSubmit={submit} className={css.form}>
      <div className={css.fields}>
        <ErrorSummary errors={errors} attempt={attempt} />
        {wantsSignIn ? <SignInLink /> : null}
        {saved && errors.length === 0 ? <Slip kind="note" title={t('saved')} /> : null}
        {children}
      </div>
      <Foot>
        <Key
          kind="save"
          type="submit"
          cannot={cannot === null ? (busy ? t('saving') : notYet) : s('cannot.key')}
        >
          {save ?? t('save')}
        </Key>
        <KeyLink kind="plain" href={back}>
          {t('leave')}
        </KeyLink>
      </Foot>
    </form>
  );
}
