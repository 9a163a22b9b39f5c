'use client'; // keys that are pressed
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { post } from '#app/client/post-entries.ts';
import { Key } from '#app/ui/Key.tsx';
import type { Language } from '#shared/words/messages.ts';
import css from './page.module.css';
import { saidToHand } from './said-to-hand.ts';

type Props = {
  language: Language;
  room: 'day' | 'pit' | null;
  languages: { key: Language; words: string }[];
};

const rooms = [
  { room: 'day', words: 'room_day' },
  { room: 'pit', words: 'room_pit' },
  { room: null, words: 'room_auto' },
] as const;

/** How this device shows its pages: its light and its language. */
export function ThisDevice({ language, room, languages }: Props) {
  const all = useTranslations('people');
  const t = useTranslations('people.list');
  const [wrong, setWrong] = useState<string | null>(null);
  const choose = async (path: string, body: object) => {
    const answer = await post(path, body);
    if (!('problems' in answer)) return window.location.reload();
    const [problem] = answer.problems;
    if (problem) setWrong(saidToHand(problem, all));
  };
  return (
    <>
      <h3>{t('room')}</h3>
      <div className={css.keys}>
        {rooms.map((one) => (
          <Key
            key={one.words}
            down={room === one.room}
            onClick={() => choose('/api/room', { room: one.room })}
          >
            {t(one.words)}
          </Key>
        ))}
      </div>
      <h3>{t('language')}</h3>
      <div className={css.keys}>
        {languages.map(({ key, words }) => (
          <Key
            key={key}
            lang={key}
            down={language === key}
            onClick={() => choose('/api/language', { language: key })}
          >
            {words}
          </Key>
        ))}
      </div>
      {wrong ? <p role="alert">{wrong}</p> : null}
    </>
  );
}
