'use client';
// A client island: two keys that change how this device shows its pages.

import { useLocale, useTranslations } from 'next-intl';
import { useState } from 'react';
import { post } from '#app/client/post-entries.ts';
import { Key } from '#app/ui/Key.tsx';
import css from './page.module.css';

/** The other room and the other language, in one tap each. */
export function DeviceKeys({ room }: { room: string | null }) {
  const t = useTranslations('kitchen.ways');
  const language = useLocale() === 'es' ? 'en' : 'es';
  const other = room === 'pit' ? 'day' : 'pit';
  const [wrong, setWrong] = useState(false);
  const choose = async (path: string, body: object): Promise<void> => {
    const answer = await post(path, body);
    if ('problems' in answer) setWrong(true);
    else window.location.reload();
  };
  return (
    <div className={css.keys}>
      <Key kind="plain" onClick={() => void choose('/api/room', { room: other })}>
        {t(other === 'pit' ? 'room_pit' : 'room_day')}
      </Key>
      <Key kind="plain" lang={language} onClick={() => void choose('/api/language', { language })}>
        {t(language === 'es' ? 'language_es' : 'language_en')}
      </Key>
      {wrong ? <p role="alert">{t('not_changed')}</p> : null}
    </div>
  );
}
