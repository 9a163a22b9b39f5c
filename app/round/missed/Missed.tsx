'use client';
// A client island: the entry waits on this phone until the book has it.

import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { v7 } from 'uuid';
import { draft } from '#app/client/post-entries.ts';
import { NotSent } from '#app/outbox/NotSent.tsx';
import { writeAndThen } from '#app/outbox/when-sent.ts';
import { Key } from '#app/ui/Key.tsx';
import css from './page.module.css';

const reasons = ['alone', 'rush', 'forgotten', 'asleep'] as const;

type Props = {
  site: string;
  by: string | null;
  plannedAt: string;
  equipment: string[];
  zone: string;
  clock: '12' | '24';
};

/** Why it was missed: one of four in one tap, or a few words. */
export function Missed({ site, by, plannedAt, equipment, zone, clock }: Props) {
  const t = useTranslations('round.missed');
  const router = useRouter();
  const [reason, setReason] = useState('');
  const [asked, setAsked] = useState(false);
  const [written, setWritten] = useState(false);
  const save = (): void => {
    setAsked(true);
    if (reason.trim() === '' || by === null) return;
    const body = {
      round: v7(),
      planned_at: plannedAt,
      status: 'missed' as const,
      equipment,
      ended_at: null,
      reason: reason.trim(),
      note: null,
    };
    setWritten(true);
    writeAndThen(site, [draft('round', body, { by, at: plannedAt })], () => {
      router.push('/');
      router.refresh();
    });
  };
  return (
    <>
      <NotSent site={site} zone={zone} clock={clock} />
      <p>{t('reason')}</p>
      <div className={css.reasons}>
        {reasons.map((each) => (
          <Key key={each} down={reason === t(each)} onClick={() => setReason(t(each))}>
            {t(each)}
          </Key>
        ))}
      </div>
      <label className={css.words}>
        <input
          value={reason}
          maxLength={300}
          onChange={(event) => setReason(event.target.value)}
          aria-label={t('reason')}
        />
      </label>
      {asked && reason.trim() === '' ? (
        <p className={css.problem} role="alert">
          {t('needs_reason')}
        </p>
      ) : null}
      <Key kind="save" wide onClick={save} disabled={written}>
        {t('save')}
      </Key>
    </>
  );
}
