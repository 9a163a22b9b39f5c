import { useTranslations } from 'next-intl';
import { TextField } from './Field.tsx';
import { Key } from './Key.tsx';
import css from './WhenPick.module.css';

/** How it was said when: minutes ago, or a time off the kitchen clock (`clock` as typed). */
export type When = { minutesAgo: number } | { clock: string };

type Props = { value: When; onChange: (when: When) => void; error?: string | undefined; id: string };

const ago = [0, 15, 60] as const;

/** When it happened: now, a little ago, an hour ago, or at a time that is typed. */
export function WhenPick({ value, onChange, error, id }: Props) {
  const t = useTranslations('batch');
  const typing = 'clock' in value;
  const words = (minutes: number) =>
    minutes === 0 ? t('when_now') : minutes === 60 ? t('when_hour') : t('when_ago', { minutes });
  return (
    <fieldset className={css.when} aria-label={t('when')}>
      {ago.map((minutes) => (
        <Key
          key={minutes}
          down={!typing && value.minutesAgo === minutes}
          onClick={() => onChange({ minutesAgo: minutes })}
        >
          {words(minutes)}
        </Key>
      ))}
      <Key down={typing} onClick={() => onChange({ clock: '' })}>
        {t('when_typed')} …
      </Key>
      {typing ? (
        <div className={css.typed}>
          <TextField
            id={id}
            label={t('when_typed_label')}
            value={value.clock}
            onChange={(event) => onChange({ clock: event.target.value })}
            error={error}
            inputMode="numeric"
            autoComplete="off"
            placeholder="23:40"
            maxLength={8}
          />
        </div>
      ) : null}
    </fieldset>
  );
}
