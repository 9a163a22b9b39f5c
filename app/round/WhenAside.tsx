import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { Clock } from '#app/ui/Clock.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Pad } from '#app/ui/Pad.tsx';
import css from './AsideFrame.module.css';
import { AsideFrame, Keys } from './AsideFrame.tsx';
import type { FaceProps } from './given.ts';
import { lastTimeOf, wallTime } from './wall-time.ts';

const reasons = ['paper', 'hands', 'phone'] as const;

/** The exact time of an earlier look, on our own keys, and why it is written late. */
export function WhenAside({ act, given, now }: FaceProps) {
  const t = useTranslations('round.when');
  const common = useTranslations('common');
  const [typed, setTyped] = useState('');
  const [reason, setReason] = useState<string | null>(null);
  const at = lastTimeOf(typed, now, given.zone, given.clock);
  const late = at !== null && now - at > given.planned.lateAfterMin * 60_000;
  return (
    <AsideFrame title={t('title')}>
      <p className={css.note}>{typed.length >= 3 && at === null ? t('no_time') : t('hint')}</p>
      <output className={css.time} aria-live="polite">
        <Clock time={at === null ? typed || '–' : wallTime(at, given.zone, given.clock)} size="name" />
      </output>
      <Pad
        onDigit={(digit) => setTyped((before) => (before.length < 4 ? before + digit : before))}
        onClear={() => setTyped('')}
        onBack={() => setTyped((before) => before.slice(0, -1))}
      />
      {late ? (
        <>
          <p className={css.note}>{t('late')}</p>
          <div className={css.reasons}>
            {reasons.map((each) => (
              <Key
                key={each}
                down={reason === t(each)}
                onClick={() => setReason(reason === t(each) ? null : t(each))}
              >
                {t(each)}
              </Key>
            ))}
          </div>
        </>
      ) : null}
      <Keys>
        <Key
          kind="save"
          cannot={at === null ? t('use_nothing') : null}
          onClick={() => at !== null && act({ do: 'exact', at, reason: late ? reason : null })}
        >
          {t('use', { time: at === null ? '' : wallTime(at, given.zone, given.clock) })}
        </Key>
        <Key kind="plain" onClick={() => act({ do: 'show', face: 'entry' })}>
          {common('back')}
        </Key>
      </Keys>
    </AsideFrame>
  );
}
