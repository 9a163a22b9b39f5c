'use client'; // a key that is pressed
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { post } from '#app/client/post-entries.ts';
import { Key } from '#app/ui/Key.tsx';
import { saidToHand } from './said-to-hand.ts';

/** Signs one person out of this device, or (null) everybody. */
export function SignOut({ person }: { person: string | null }) {
  const t = useTranslations('people');
  const [wrong, setWrong] = useState<string | null>(null);
  const leave = async () => {
    const answer = await post('/api/sign-out', { person });
    if (!('problems' in answer)) return window.location.reload();
    const [problem] = answer.problems;
    if (problem) setWrong(saidToHand(problem, t));
  };
  return (
    <>
      <Key kind="plain" onClick={leave}>
        {t(person === null ? 'list.sign_out_all' : 'list.sign_out')}
      </Key>
      {wrong ? <p role="alert">{wrong}</p> : null}
    </>
  );
}
