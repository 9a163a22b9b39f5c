'use client'; // a form
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { v7 } from 'uuid';
import { SelectField, TextArea, TextField } from '#app/ui/Field.tsx';
import { Pick } from '#app/ui/Pick.tsx';
import type { Body } from '#shared/entries/entry.ts';
import { equipmentKind } from '#shared/entries/equipment.ts';
import { degrees, type Unit } from '#shared/units.ts';
import { ThingFrame } from '../form/ThingFrame.tsx';
import { numberOrNull, shown, textOf, ticked, wordsOrNull } from '../form/typed-values.ts';
import { useThingForm } from '../form/useThingForm.ts';

type Props = {
  known: Body<'equipment'> | null;
  was: string | null; // the entry that says it
  next: number; // place at the end of the walk
  unit: Unit;
  by: string;
  cannot: string | null;
};

const back = '/set-up/equipment';

export function EquipmentForm({ known, was, next, unit: siteUnit, by, cannot }: Props) {
  const t = useTranslations('setup.equipment');
  const all = useTranslations('setup');
  const c = useTranslations('common');
  const [id] = useState(() => known?.equipment ?? v7());
  const unit = known?.set?.unit ?? siteUnit;
  const form = useThingForm({
    kind: 'equipment',
    by,
    was,
    labels: {
      name: t('name'),
      kind: t('kind'),
      set_value: t('set'),
      order: t('order'),
      note: all('note'),
    },
    after: back,
    start: {
      name: known?.name ?? '',
      kind: known?.kind ?? 'heated_cabinet',
      set_value: shown(known?.set?.value),
      order: shown(known?.order ?? next),
      note: known?.note ?? '',
      active: known?.active ?? true,
    },
    meaning: (typed) => {
      const value = numberOrNull(typed, 'set_value');
      return {
        equipment: id,
        name: textOf(typed, 'name'),
        kind: textOf(typed, 'kind'),
        set: value === null ? null : { value, unit },
        order: numberOrNull(typed, 'order'),
        note: wordsOrNull(typed, 'note'),
        active: ticked(typed, 'active'),
      };
    },
  });
  return (
    <ThingFrame {...form} cannot={cannot} back={back}>
      <TextField big hint={t('name_hint')} autoComplete="off" {...form.field('name')} />
      <SelectField
        options={equipmentKind.options.map((value) => ({ value, words: c(`equipment.${value}`) }))}
        {...form.field('kind')}
      />
      <TextField
        hint={t('set_hint')}
        inputMode="decimal"
        after={degrees(unit)}
        {...form.field('set_value')}
      />
      <TextField hint={t('order_hint')} inputMode="numeric" {...form.field('order')} />
      <TextArea {...form.field('note')} />
      <Pick type="checkbox" title={all('active')} note={t('active_note')} {...form.tick('active')} />
    </ThingFrame>
  );
}
