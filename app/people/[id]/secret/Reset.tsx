'use client'; // keys that are pressed
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { post } from '#app/client/post-entries.ts';
import { type Asked, AskSecret } from '#app/people/AskSecret.tsx';
import { saidToHand } from '#app/people/said-to-hand.ts';
import { HandList } from '#app/ui/HandList.tsx';
import css from '../../page.module.css';

type Props = { person: { id: string; name: string }; may: Asked[] };

/** Takes a forgotten secret away: who does it, that one's own secret, then the book says so. */
export function Reset({ person, may }: Props) {
  const all = useTranslations('people');
  const t = useTranslations('people.set');
  const [by, setBy] = useState<Asked | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const [done, setDone] = useState(false);

  const reset = async (who: Asked) => {
    setBy(null);
    const answer = await post('/api/secret', { change: 'reset', person: person.id, by: who.id });
    if (!('problems' in answer)) return setDone(true);
    const [problem] = answer.problems;
    if (problem) setWrong(saidToHand(problem, all));
  };

  if (done)
    return (
      <p className={css.part} role="status">
        {t('reset_done', { name: person.name })}
      </p>
    );
  return (
    <section className={css.part}>
      <h2>{t('forgotten')}</h2>
      <p className={css.note}>{t('forgotten_note', { name: person.name })}</p>
      {may.length === 0 ? <p>{t('nobody_may')}</p> : null}
      {by === null && may.length > 0 ? (
        <>
          <h3>{t('reset_by')}</h3>
          <HandList people={may} onPick={(id) => setBy(may.find((one) => one.id === id) ?? null)} />
        </>
      ) : null}
      {by ? <AskSecret person={by} onDone={() => reset(by)} onCancel={() => setBy(null)} /> : null}
      {wrong ? <p role="alert">{wrong}</p> : null}
    </section>
  );
}
