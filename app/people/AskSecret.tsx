'use client'; // asks, and waits for the answer
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { post } from '#app/client/post-entries.ts';
import { Key } from '#app/ui/Key.tsx';
import type { Role } from '#shared/entries/person.ts';
import { leastSecretOf } from '#shared/requests/secret.ts';
import css from './AskSecret.module.css';
import { SecretEntry } from './SecretEntry.tsx';
import { saidToHand } from './said-to-hand.ts';

export type Asked = { id: string; name: string; initials: string; role: Role };

/**
 * The secret again, for a decision or a signature. `onDone` is called when the server took it: from then on, for
 * a few minutes, this person's decision or signature is accepted from this device. Needs the words `people`.
 */
export function AskSecret(props: { person: Asked; onDone: () => void; onCancel: () => void }) {
  const { person, onDone, onCancel } = props;
  const t = useTranslations('people');
  const [busy, setBusy] = useState(false);
  const [wrong, setWrong] = useState<{ words: string; shut: boolean } | null>(null);

  const confirm = async (secret: string) => {
    setBusy(true);
    const answer = await post('/api/confirm-secret', { person: person.id, secret });
    setBusy(false);
    if (!('problems' in answer)) return onDone();
    const [problem] = answer.problems;
    if (problem) setWrong({ words: saidToHand(problem, t), shut: problem.problem === 'secret_shut' });
  };

  return (
    <section className={css.ask} aria-label={t('ask.title', { name: person.name })}>
      <h2>{t('ask.title', { name: person.name })}</h2>
      <p className={css.why}>{t('ask.why')}</p>
      <SecretEntry
        least={leastSecretOf(person.role)}
        letters={leastSecretOf(person.role) > leastSecretOf('crew')}
        save={t('ask.confirm', { initials: person.initials })}
        busy={busy}
        wrong={wrong}
        onDone={confirm}
      />
      <Key kind="plain" wide onClick={onCancel}>
        {t('ask.cancel')}
      </Key>
    </section>
  );
}
