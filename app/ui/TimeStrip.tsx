import { useTranslations } from 'next-intl';
import { Key } from './Key.tsx';
import css from './TimeStrip.module.css';

export type MinutesAgo = 0 | 5 | 10 | 20;
export const minutesAgo: readonly MinutesAgo[] = [0, 5, 10, 20];

type Props = {
  value: MinutesAgo;
  onChange: (minutes: MinutesAgo) => void /** on the wall, "02:31" */;
  now: string;
};

/** When the thermometer read it: now, or honestly a little earlier. */
export function TimeStrip({ value, onChange, now }: Props) {
  const t = useTranslations('parts.time');
  return (
    <fieldset className={css.strip} aria-label={t('label')}>
      {minutesAgo.map((minutes) => (
        <Key
          key={minutes}
          down={value === minutes}
          onClick={() => onChange(minutes)}
          sub={minutes === 0 ? now : t('earlier_second', { minutes })}
        >
          {minutes === 0 ? t('now') : t('earlier_first', { minutes })}
        </Key>
      ))}
    </fieldset>
  );
}
