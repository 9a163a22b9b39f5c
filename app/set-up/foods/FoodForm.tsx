'use client'; // a form
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { v7 } from 'uuid';
import { SelectField, TextArea, TextField } from '#app/ui/Field.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import type { Body } from '#shared/entries/entry.ts';
import { foodClass } from '#shared/entries/food.ts';
import { ThingFrame } from '../form/ThingFrame.tsx';
import { textOf, ticked, wordsOrNull } from '../form/typed-values.ts';
import { useThingForm } from '../form/useThingForm.ts';
import type { ClassLines } from './class-lines.ts';

type Props = {
  known: Body<'food'> | null;
  was: string | null; // the entry that says it
  by: string;
  cannot: string | null;
  /** What each class decides under the limits in force. */
  lines: ClassLines;
};

const back = '/set-up/foods';
const counted = ['pieces', 'pans', 'not_counted'] as const;

export function FoodForm({ known, was, by, cannot, lines }: Props) {
  const t = useTranslations('setup.foods');
  const all = useTranslations('setup');
  const c = useTranslations('common');
  const [id] = useState(() => known?.food ?? v7());
  const form = useThingForm({
    kind: 'food',
    by,
    was,
    labels: {
      name: t('name'),
      name_es: t('name_es'),
      class: t('class'),
      note: all('note'),
      counted: t('counted'),
    },
    after: back,
    start: {
      name: known?.name ?? '',
      name_es: known?.name_es ?? '',
      class: known?.class ?? 'unknown',
      counted: known?.counted ?? 'pieces',
      sealed_commercial: known?.sealed_commercial ?? false,
      note: known?.note ?? '',
      active: known?.active ?? true,
    },
    meaning: (typed) => ({
      food: id,
      name: textOf(typed, 'name'),
      name_es: wordsOrNull(typed, 'name_es'),
      class: textOf(typed, 'class'),
      counted: textOf(typed, 'counted'),
      sealed_commercial: ticked(typed, 'sealed_commercial'),
      note: wordsOrNull(typed, 'note'),
      active: ticked(typed, 'active'),
    }),
  });
  const chosen = foodClass.safeParse(form.form.watch('class'));
  return (
    <ThingFrame {...form} cannot={cannot} back={back}>
      <TextField big autoComplete="off" {...form.field('name')} />
      <TextField autoComplete="off" {...form.field('name_es')} />
      <SelectField
        hint={t('class_hint')}
        options={foodClass.options.map((value) => ({ value, words: c(`food_class.${value}`) }))}
        {...form.field('class')}
      />
      <p aria-live="polite">{chosen.success ? lines[chosen.data] : ''}</p>
      <PickGroup {...form.group('counted')}>
        {counted.map((value) => (
          <Pick
            key={value}
            title={c(`counted.${value}`)}
            note={t(`counted_note.${value}`)}
            {...form.pick('counted', value)}
          />
        ))}
      </PickGroup>
      <Pick type="checkbox" title={t('sealed')} note={t('sealed_note')} {...form.tick('sealed_commercial')} />
      <TextArea {...form.field('note')} />
      <Pick type="checkbox" title={all('active')} note={t('active_note')} {...form.tick('active')} />
    </ThingFrame>
  );
}
