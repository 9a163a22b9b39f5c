import { useTranslations } from 'next-intl';
import css from './HandList.module.css';

export type HandOffered = { id: string; initials: string; name: string; note?: string | undefined };

type Props = { people: readonly HandOffered[]; chosen?: string | null; onPick: (person: string) => void };

/** Whose hand: one large key a person. */
export function HandList({ people, chosen = null, onPick }: Props) {
  const t = useTranslations('parts');
  return (
    <fieldset className={css.list} aria-label={t('who')}>
      {people.map((person) => (
        <button
          key={person.id}
          type="button"
          className={css.person}
          aria-pressed={chosen === person.id}
          onClick={() => onPick(person.id)}
        >
          <span className={css.initials} aria-hidden="true">
            {person.initials}
          </span>
          <span>
            <span className={css.name}>{person.name}</span>
            {person.note ? <span className={css.note}>{person.note}</span> : null}
          </span>
        </button>
      ))}
    </fieldset>
  );
}
