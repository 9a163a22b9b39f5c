'use client'; // asks for the secret, then writes
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { useWrite } from '#app/client/useWrite.ts';
import { type Asked, AskSecret } from '#app/people/AskSecret.tsx';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { Key } from '#app/ui/Key.tsx';
import { confirmation } from './action-entries.ts';
import css from './deviation.module.css';

/** The one who decided by phone confirms it, with their own secret, on this screen. */
export function Confirm({ deviation, entry, person }: { deviation: string; entry: string; person: Asked }) {
  const t = useTranslations('deviation');
  const common = useTranslations('common');
  const router = useRouter();
  const [asking, setAsking] = useState(false);
  const { write, busy, errors, attempt } = useWrite(person.id);
  const done = async () => {
    setAsking(false);
    if ((await write([confirmation(deviation, entry, person.id, t('confirm_reason'))])) !== null)
      router.refresh();
  };
  if (asking)
    return <AskSecret person={person} onCancel={() => setAsking(false)} onDone={() => void done()} />;
  return (
    <div className={css.part}>
      <ErrorSummary errors={errors} attempt={attempt} />
      <Key onClick={() => setAsking(true)} cannot={busy ? common('saving') : null} sub={t('confirm')}>
        {t('confirm_as', { name: person.name })}
      </Key>
    </div>
  );
}
