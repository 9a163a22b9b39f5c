'use client'; // a form that keeps nothing of what is typed
import { useTranslations } from 'next-intl';
import { type FormEvent, useState } from 'react';
import { post } from '#app/client/post-entries.ts';
import { saidToHand } from '#app/people/said-to-hand.ts';
import { TextField } from '#app/ui/Field.tsx';
import { Key } from '#app/ui/Key.tsx';
import type { Role } from '#shared/entries/person.ts';
import css from '../../page.module.css';

type Props = {
  person: { id: string; name: string; role: Role };
  /** The first secret asks for no old one. */
  first: boolean;
  invitation: string | null;
};

/** A person's own new secret, typed twice. */
export function SetSecret({ person, first, invitation }: Props) {
  const all = useTranslations('people');
  const t = useTranslations('people.set');
  const [wrong, setWrong] = useState<{ field: string; words: string } | null>(null);
  const [done, setDone] = useState(false);
  const [busy, setBusy] = useState(false);

  const save = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const typed = new FormData(event.currentTarget);
    const secret = String(typed.get('secret') ?? '');
    if (secret !== typed.get('again')) return setWrong({ field: 'again', words: t('not_the_same') });
    setBusy(true);
    const answer = await post('/api/secret', {
      change: 'set',
      person: person.id,
      secret,
      old: first ? null : String(typed.get('old') ?? ''),
      invitation,
    });
    setBusy(false);
    if (!('problems' in answer)) return setDone(true);
    const [problem] = answer.problems;
    if (problem) setWrong({ field: problem.field || 'secret', words: saidToHand(problem, all) });
  };
  const errorOf = (field: string) => (wrong?.field === field ? wrong.words : undefined);

  if (done)
    return (
      <p className={css.part} role="status">
        {t('saved')}
      </p>
    );
  return (
    <form onSubmit={save} className={css.part}>
      <p>{t(first ? 'first' : 'change', { name: person.name })}</p>
      {first ? null : (
        <TextField
          id="old"
          name="old"
          type="password"
          label={t('old')}
          autoComplete="current-password"
          maxLength={200}
          error={errorOf('old')}
        />
      )}
      <TextField
        id="new-secret"
        name="secret"
        type="password"
        label={t('new')}
        hint={t('least', { role: person.role })}
        autoComplete="new-password"
        maxLength={200}
        error={errorOf('secret')}
      />
      <TextField
        id="again"
        name="again"
        type="password"
        label={t('again')}
        autoComplete="new-password"
        maxLength={200}
        error={errorOf('again')}
      />
      <Key kind="save" wide type="submit" disabled={busy}>
        {t('save')}
      </Key>
    </form>
  );
}
