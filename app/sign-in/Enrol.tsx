'use client'; // forms that keep what was typed
import { useTranslations } from 'next-intl';
import { type FormEvent, useState } from 'react';
import { post } from '#app/client/post-entries.ts';
import { saidToHand } from '#app/people/said-to-hand.ts';
import { TextField } from '#app/ui/Field.tsx';
import { Key } from '#app/ui/Key.tsx';
import css from './Enrol.module.css';

type Wrong = { field: string; words: string };

/** A device that the kitchen does not know yet: in by a code, or by a manager's own secret. */
export function Enrol({ code, next }: { code: string; next: string }) {
  const all = useTranslations('people');
  const t = useTranslations('people.enrol');
  const [wrong, setWrong] = useState<Wrong | null>(null);
  const [busy, setBusy] = useState(false);
  const [device, setDevice] = useState('');

  const send = (by: 'code' | 'manager') => async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const typed = Object.fromEntries(new FormData(event.currentTarget));
    setBusy(true);
    const answer = await post<{ person: string | null }>('/api/enrol', { by, ...typed, device });
    setBusy(false);
    if ('problems' in answer) {
      const [problem] = answer.problems;
      if (problem) setWrong({ field: `${by}.${problem.field}`, words: saidToHand(problem, all) });
    } else {
      window.location.assign(answer.person === null ? next : `/people/${answer.person}/secret?code=${code}`);
    }
  };
  const errorOf = (field: string) => (wrong?.field === field ? wrong.words : undefined);
  const elsewhere = ['code.code', 'manager.name', 'manager.secret'].includes(wrong?.field ?? '')
    ? undefined
    : wrong?.words;

  return (
    <div className={css.enrol}>
      <h1>{t('title')}</h1>
      <p>{t('why')}</p>
      <TextField
        id="device"
        label={t('device')}
        hint={t('device_example')}
        value={device}
        maxLength={200}
        onChange={(event) => setDevice(event.target.value)}
        error={elsewhere}
      />
      <form onSubmit={send('code')} className={css.way}>
        <h2>{t('by_code')}</h2>
        <TextField
          id="code"
          name="code"
          label={t('code')}
          hint={t('code_hint')}
          defaultValue={code}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          maxLength={40}
          error={errorOf('code.code')}
        />
        <Key kind="save" wide type="submit" disabled={busy}>
          {t('let_in')}
        </Key>
      </form>
      <form onSubmit={send('manager')} className={css.way}>
        <h2>{t('by_manager')}</h2>
        <TextField
          id="name"
          name="name"
          label={t('name')}
          autoComplete="username"
          maxLength={200}
          error={errorOf('manager.name')}
        />
        <TextField
          id="secret"
          name="secret"
          type="password"
          label={t('secret')}
          autoComplete="current-password"
          maxLength={200}
          error={errorOf('manager.secret')}
        />
        <Key kind="normal" wide type="submit" disabled={busy}>
          {t('let_in')}
        </Key>
      </form>
    </div>
  );
}
