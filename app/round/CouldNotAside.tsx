import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { Key } from '#app/ui/Key.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import css from './AsideFrame.module.css';
import { AsideFrame, Beside, Keys, Last } from './AsideFrame.tsx';
import type { FaceProps } from './given.ts';

const reasons = ['no_probe', 'not_there', 'too_hot', 'locked', 'no_time', 'other'] as const;

/** Why a look could not be made, in one tap, or without a reason. It is no look. */
export function CouldNotAside({ state, act }: FaceProps) {
  const t = useTranslations('round.could');
  const common = useTranslations('common');
  const [text, setText] = useState('');
  const look = state.looks[state.current];
  return (
    <AsideFrame title={t('title')}>
      <div className={css.halves}>
        {reasons.map((reason) => (
          <Key key={reason} onClick={() => act({ do: 'could_not', reason, text })}>
            {t(reason)}
          </Key>
        ))}
      </div>
      <Keys>
        <label className={css.words}>
          <span className={css.note}>{t('words')}</span>
          <input value={text} maxLength={200} onChange={(event) => setText(event.target.value)} />
        </label>
        {look?.batch ? (
          <KeyLink kind="plain" href={`/batch/${look.batch}`}>
            {t('gone')}
          </KeyLink>
        ) : null}
      </Keys>
      <p className={css.note}>{t('no_look')}</p>
      <Last>
        <Beside>
          <Key kind="plain" onClick={() => act({ do: 'could_not', reason: null, text })}>
            {t('no_reason')}
          </Key>
          <Key kind="plain" onClick={() => act({ do: 'show', face: 'entry' })}>
            {common('back')}
          </Key>
        </Beside>
      </Last>
    </AsideFrame>
  );
}
