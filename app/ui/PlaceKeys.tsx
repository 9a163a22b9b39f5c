import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { placesFor } from '#app/client/places.ts';
import type { EquipmentKind } from '#shared/entries/equipment.ts';
import type { StepName } from '#shared/entries/step-name.ts';
import { Key } from './Key.tsx';
import css from './PlaceKeys.module.css';

export type Place = { id: string; name: string; kind: EquipmentKind };

type Props = {
  step: StepName;
  places: readonly Place[];
  value: string | null;
  onChange: (equipment: string) => void;
};

/** Where: the places that this step usually takes, the others behind one more key. */
export function PlaceKeys({ step, places, value, onChange }: Props) {
  const t = useTranslations('batch');
  const { usual, other } = placesFor(step, places);
  const [asked, setAsked] = useState(false);
  const open = asked || usual.length === 0 || other.some((place) => place.id === value);
  const key = (place: Place) => (
    <Key key={place.id} down={value === place.id} onClick={() => onChange(place.id)}>
      {place.name}
    </Key>
  );
  return (
    <fieldset className={css.keys} aria-label={t('where')}>
      {usual.map(key)}
      {open ? (
        other.map(key)
      ) : (
        <Key kind="plain" onClick={() => setAsked(true)}>
          {t('where_more')}
        </Key>
      )}
    </fieldset>
  );
}
