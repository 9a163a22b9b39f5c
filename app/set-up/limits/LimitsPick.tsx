'use client'; // filters while typing
import { useTranslations } from 'next-intl';
import { type ReactNode, useId, useState } from 'react';
import { TextField } from '#app/ui/Field.tsx';
import { Pick } from '#app/ui/Pick.tsx';
import { byPlace, found, type Offered, type Place, partsOf } from './find-limits.ts';
import css from './LimitsPick.module.css';

type Props = {
  id: string; // where a summary of problems leads
  label: ReactNode;
  hint?: ReactNode;
  error?: string | undefined;
  /** Of a plain form: what the chosen id is sent as. */
  name?: string;
  offered: readonly Offered[];
  chosen: string;
  onChoose: (id: string) => void;
  /** What stands below the chosen one: its figures. */
  children?: ReactNode;
};

type Sentence = { (key: string): string; has: (key: string) => boolean };

/** A country in the language of the page; one that a local file brought stays as that file calls it. */
function useCountry(): (country: string) => string {
  const t = useTranslations('limits.country') as unknown as Sentence;
  return (country) => (!country.includes('.') && t.has(country) ? t(country) : country);
}

/**
 * The limits of a site: the chosen ones in full, and behind them all others by country and place, found by typing. Made
 * of native parts, so that it is worked by keys: the list opens, each country opens, the arrows go through its limits.
 */
export function LimitsPick({ id, label, hint, error, name, offered, chosen, onChoose, children }: Props) {
  const t = useTranslations('limits.pick');
  const country = useCountry();
  const [first] = useState(chosen); // the list stands still while one chooses
  const [typed, setTyped] = useState('');
  const places = found(byPlace(offered, first, country), typed, country);
  const count = places.reduce((sum, place) => sum + place.offered.length, 0);
  const group = useId();
  const here = offered.find((one) => one.id === chosen);
  const shut = typed.trim() === '';
  return (
    <fieldset className={css.limits} id={id} tabIndex={-1}>
      <legend className={css.legend}>{label}</legend>
      {hint ? <p className={css.hint}>{hint}</p> : null}
      {name === undefined ? null : <input type="hidden" name={name} value={chosen} />}
      <div className={css.chosen} aria-live="polite">
        {here ? <Chosen one={here} country={country} /> : chosen === '' ? null : <p>{t('not_known')}</p>}
      </div>
      {error ? (
        <p className={css.error} role="alert">
          {error}
        </p>
      ) : null}
      <details className={css.list} open={here === undefined}>
        <summary className={css.open}>{t('choose')}</summary>
        <TextField
          id={`${id}-find`}
          label={t('find')}
          type="search"
          autoComplete="off"
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === 'Enter') event.preventDefault(); // it would send the form around it
          }}
        />
        <p className={css.hint} role="status">
          {shut ? '' : count === 0 ? t('none', { typed: typed.trim() }) : t('found', { count })}
        </p>
        {places.map((place) => (
          <details
            key={`${place.country} ${shut}`}
            className={css.place}
            open={!shut || place.offered.some((one) => one.id === first)}
          >
            <summary className={css.open}>
              {place.country === null ? t('own') : country(place.country)} ({place.offered.length})
            </summary>
            <Rows place={place} group={group} chosen={chosen} onChoose={onChoose} />
          </details>
        ))}
      </details>
      {children}
    </fieldset>
  );
}

function Chosen({ one, country }: { one: Offered; country: (country: string) => string }) {
  const t = useTranslations('limits');
  const { country: of, part } = partsOf(one.place);
  return (
    <>
      <p className={css.name}>{one.name}</p>
      <p className={css.note}>
        {one.over === null
          ? [country(of), part].filter(Boolean).join(', ')
          : t('pick.over', { parent: one.over })}
        {' · '}
        {one.edition}
      </p>
      <p className={css.note}>{t(`force_says.${one.force}`)}</p>
    </>
  );
}

type RowsProps = { place: Place; group: string; chosen: string; onChoose: (id: string) => void };

function Rows({ place, group, chosen, onChoose }: RowsProps) {
  const t = useTranslations('limits');
  return (
    <div className={css.rows}>
      {place.offered.map((one) => (
        <Pick
          key={one.id}
          name={group}
          value={one.id}
          title={one.name}
          note={[
            one.over === null ? partsOf(one.place).part : t('pick.over', { parent: one.over }),
            one.name.includes(one.edition) ? '' : one.edition,
            t(`force.${one.force}`),
          ]
            .filter(Boolean)
            .join(' · ')}
          checked={one.id === chosen}
          onChange={() => onChoose(one.id)}
        />
      ))}
    </div>
  );
}
