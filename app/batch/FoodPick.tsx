import { useTranslations } from 'next-intl';
import { TextField } from '#app/ui/Field.tsx';
import { Key } from '#app/ui/Key.tsx';
import css from './form.module.css';

export type FoodOffered = { id: string; name: string; counted: 'pieces' | 'pans' | 'not_counted' };

type Props = {
  foods: readonly FoodOffered[];
  value: string | null;
  onChange: (food: string) => void;
  /** The id that a food which is typed will have. */
  typedId: string;
  typed: string;
  onTyped: (name: string) => void;
};

/** What it is: the foods of this kitchen, or one that is typed and that nobody has classed yet. */
export function FoodPick({ foods, value, onChange, typedId, typed, onTyped }: Props) {
  const t = useTranslations('batch');
  return (
    <section className={css.part}>
      <h2>{t('food')}</h2>
      {foods.length === 0 ? <p className={css.note}>{t('food_none')}</p> : null}
      <div className={css.keys}>
        {foods.map((each) => (
          <Key key={each.id} down={value === each.id} onClick={() => onChange(each.id)}>
            {each.name}
          </Key>
        ))}
        <Key kind="plain" down={value === typedId} onClick={() => onChange(typedId)}>
          {t('food_other')}
        </Key>
      </div>
      {value === typedId ? (
        <TextField
          id="food-typed"
          label={t('food_typed')}
          hint={t('food_typed_help')}
          value={typed}
          onChange={(event) => onTyped(event.target.value)}
          maxLength={100}
          autoComplete="off"
          big
        />
      ) : null}
    </section>
  );
}
