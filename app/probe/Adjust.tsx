'use client'; // a form; what is typed stays until it is in the book
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { useWrite } from '#app/client/useWrite.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { TextField } from '#app/ui/Field.tsx';
import { Key } from '#app/ui/Key.tsx';
import { degrees, type Unit } from '#shared/units.ts';
import { correctionOf } from './correction.ts';
import css from './page.module.css';

type Props = {
  by: string;
  probe: string;
  unit: Unit;
  /** What stands now, in words. */
  now: string;
  /** What two baths say should be added, in its unit; null = nothing is known. */
  suggested: number | null;
};

/** An adjustment: degrees added from now on, and on what it rests. */
export function Adjust({ by, probe, unit, now, suggested }: Props) {
  const t = useTranslations('kitchen.probe');
  const router = useRouter();
  const { write, busy, errors, attempt } = useWrite(by);
  const [typed, setTyped] = useState('');
  const [reason, setReason] = useState('');
  const [asked, setAsked] = useState(false);
  const correction = correctionOf(typed);
  const wrong = asked && correction === 'wrong';
  const bare = asked && reason.trim() === '';
  const save = async (): Promise<void> => {
    setAsked(true);
    if (correction === 'wrong' || reason.trim() === '') return;
    const body = { probe, correction, unit, reason: reason.trim() };
    if ((await write([{ kind: 'probe_adjusted', body }])) === null) return;
    setTyped('');
    setReason('');
    setAsked(false);
    router.refresh();
  };
  return (
    <section className={css.part}>
      <h3>{t('adjust')}</h3>
      <p>{now}</p>
      <p className={css.note}>{t('adjust_help')}</p>
      <ErrorSummary errors={errors} attempt={attempt} />
      <TextField
        id="adjust-value"
        label={t('adjust_value')}
        hint={
          suggested === null
            ? t('adjust_value_hint')
            : `${t('adjust_value_hint')} ${t('adjust_suggest', { figure: `${String(suggested).replace('-', '−')}\u00a0${degrees(unit)}` })}`
        }
        error={wrong ? t('adjust_wrong') : undefined}
        autoComplete="off"
        value={typed}
        onChange={({ target }) => setTyped(target.value)}
        after={degrees(unit)}
      />
      <TextField
        id="adjust-reason"
        label={t('adjust_reason')}
        hint={t('adjust_reason_hint')}
        error={bare ? t('adjust_why') : undefined}
        autoComplete="off"
        maxLength={80}
        value={reason}
        onChange={({ target }) => setReason(target.value)}
      />
      <Key kind="save" wide onClick={() => void save()} cannot={busy ? t('written') : null}>
        {t('adjust_key')}
      </Key>
    </section>
  );
}
