'use client'; // fills the book on a tap and says so
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { post } from '#app/client/post-entries.ts';
import { useProblemWords } from '#app/set-up/form/use-problem-words.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { Key } from '#app/ui/Key.tsx';
import css from './page.module.css';

/** The invented kitchen, for whoever only wants to look. */
export function DemoKey() {
  const t = useTranslations('setup.first_run');
  const wordsOf = useProblemWords();
  const [busy, setBusy] = useState(false);
  const [errors, setErrors] = useState<{ words: string }[]>([]);
  const open = async () => {
    setBusy(true);
    setErrors([]);
    const answer = await post<{ next: string }>('/api/demo', {});
    if ('next' in answer) return window.location.assign(answer.next); // where the demo's secrets are said
    setBusy(false);
    setErrors((answer.problems as Parameters<typeof wordsOf>[0][]).map((one) => ({ words: wordsOf(one) })));
  };
  return (
    <section className={css.demo}>
      <ErrorSummary errors={errors} />
      <p>{t('or_demo')}</p>
      <Key wide sub={t('demo_note')} cannot={busy ? t('demo_busy') : null} onClick={open}>
        {t('demo')}
      </Key>
    </section>
  );
}
