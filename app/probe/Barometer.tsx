'use client'; // what it says goes into the check above
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { TextField } from '#app/ui/Field.tsx';
import type { Unit } from '#shared/units.ts';
import { boilsByBarometer } from './baths.ts';

type Props = { unit: Unit; onBoils: (expected: string) => void };

/** A barometer at the place takes the weather out of the boiling point. Nothing of it is written but the figure. */
export function Barometer({ unit, onBoils }: Props) {
  const t = useTranslations('kitchen.probe');
  const [typed, setTyped] = useState('');
  const boilsAt = (text: string): string | null => {
    const value = Number(text.trim().replace(',', '.') || Number.NaN);
    return Number.isFinite(value) ? boilsByBarometer(value, unit) : null;
  };
  const wrong = typed.trim().length >= 3 && boilsAt(typed) === null;
  return (
    <TextField
      id="barometer"
      label={t('pressure')}
      hint={t('pressure_hint')}
      error={wrong ? t('pressure_wrong') : undefined}
      inputMode="decimal"
      autoComplete="off"
      value={typed}
      onChange={({ target }) => {
        setTyped(target.value);
        const found = boilsAt(target.value);
        if (found !== null) onBoils(found);
      }}
    />
  );
}
