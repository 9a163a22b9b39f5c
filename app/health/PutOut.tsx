'use client'; // asks once more before it is done
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { post } from '#app/client/post-entries.ts';
import { useProblemWords } from '#app/set-up/form/use-problem-words.ts';
import { Key } from '#app/ui/Key.tsx';
import css from './page.module.css';

/** Puts one device out, after it was said what that means. */
export function PutOut({ device, name }: { device: string; name: string }) {
  const t = useTranslations('health.devices');
  const wordsOf = useProblemWords();
  const [asks, setAsks] = useState(false);
  const [busy, setBusy] = useState(false);
  const [wrong, setWrong] = useState<string | null>(null);
  const put = async () => {
    setBusy(true);
    const answer = await post('/api/put-out', { device });
    if (!('problems' in answer)) return window.location.reload();
    setBusy(false);
    const [problem] = answer.problems;
    if (problem) setWrong(wordsOf(problem));
  };
  if (!asks)
    return (
      <Key kind="plain" onClick={() => setAsks(true)}>
        {t('put_out', { name })}
      </Key>
    );
  return (
    <>
      <p>{t('means', { name })}</p>
      <div className={css.keys}>
        <Key disabled={busy} onClick={put}>
          {t('yes', { name })}
        </Key>
        <Key kind="plain" onClick={() => setAsks(false)}>
          {t('no')}
        </Key>
      </div>
      {wrong ? <p role="alert">{wrong}</p> : null}
    </>
  );
}
