'use client'; // one field that writes
import { useRouter } from 'next/navigation';
import { useLocale, useTranslations } from 'next-intl';
import { useState } from 'react';
import { useWrite } from '#app/client/useWrite.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { TextArea } from '#app/ui/Field.tsx';
import { Key } from '#app/ui/Key.tsx';
import { actionEntries } from './action-entries.ts';
import css from './deviation.module.css';

type Props = { deviation: string; by: string; batch: string | null; pieces: number[] | null };

/** Why it happened, in the words of the one who writes it. */
export function Cause({ deviation, by, batch, pieces }: Props) {
  const t = useTranslations('deviation');
  const common = useTranslations('common');
  const lang = useLocale() === 'es' ? 'es' : 'en';
  const router = useRouter();
  const [cause, setCause] = useState('');
  const { write, busy, errors, attempt } = useWrite(by);
  const save = async () => {
    const entries = actionEntries({
      deviation,
      batch,
      pieces,
      choice: 'other',
      decided: { by, via: 'own_duty', words: null },
      step: null,
      equipment: null,
      condition: null,
      disposition: null,
      amount: null,
      cause: cause.trim(),
      text: '',
      lang,
    });
    if ((await write(entries)) === null) return;
    setCause('');
    router.refresh();
  };
  return (
    <div className={css.part}>
      <ErrorSummary errors={errors} attempt={attempt} />
      <TextArea
        id="cause"
        label={t('cause')}
        hint={t('cause_hint')}
        value={cause}
        onChange={(event) => setCause(event.target.value)}
        maxLength={500}
        rows={2}
      />
      <Key
        onClick={() => void save()}
        cannot={cause.trim() === '' ? t('write_first.cause') : busy ? common('saving') : null}
        wide
      >
        {t('cause_write')}
      </Key>
    </div>
  );
}
