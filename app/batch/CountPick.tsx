import { useTranslations } from 'next-intl';
import { TextField } from '#app/ui/Field.tsx';
import { Key } from '#app/ui/Key.tsx';
import css from './form.module.css';

/** A key, a number that is typed, not counted, or nothing said yet. */
export type CountChoice = number | { typed: string } | 'none' | null;

const most = 999; // as the batch entry takes it

/** How many; null while nothing (or no whole number from 1 to 999) is said. */
export function countOf(choice: CountChoice): number | 'none' | null {
  if (choice === null || choice === 'none' || typeof choice === 'number') return choice;
  if (!/^\d{1,3}$/.test(choice.typed.trim())) return null;
  const count = Number(choice.typed);
  return count >= 1 && count <= most ? count : null;
}

const keys = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12] as const;

type Props = { pans: boolean; value: CountChoice; none: boolean; onChange: (choice: CountChoice) => void };

export function CountPick({ pans, value, none, onChange }: Props) {
  const t = useTranslations('batch');
  const typing = value !== null && typeof value === 'object';
  const wrong = typing && value.typed.trim() !== '' && countOf(value) === null;
  return (
    <section className={css.part}>
      <h2>{pans ? t('count_pans') : t('count')}</h2>
      <div className={css.numbers}>
        {keys.map((number) => (
          <Key key={number} kind="num" down={value === number} onClick={() => onChange(number)}>
            {number}
          </Key>
        ))}
      </div>
      <div className={css.keys}>
        <Key down={none || value === 'none'} onClick={() => onChange('none')}>
          {t('count_none')}
        </Key>
        <Key down={typing} onClick={() => onChange({ typed: '' })}>
          {t('count_other')}
        </Key>
      </div>
      {typing ? (
        <TextField
          id="count"
          label={t('count_other')}
          value={value.typed}
          inputMode="numeric"
          maxLength={3}
          error={wrong ? t('count_wrong') : undefined}
          onChange={(event) => onChange({ typed: event.target.value })}
        />
      ) : null}
    </section>
  );
}
