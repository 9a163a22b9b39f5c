'use client'; // a form
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { v7 } from 'uuid';
import { SelectField, TextArea, TextField } from '#app/ui/Field.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import type { Body } from '#shared/entries/entry.ts';
import { spot as spots, stepName } from '#shared/entries/step-name.ts';
import { ThingFrame } from '../form/ThingFrame.tsx';
import { useThingForm } from '../form/useThingForm.ts';
import { asksNothing, atMostBelowEvery, planMeant, planTyped } from './plan-typed.ts';

type Props = {
  known: Body<'plan'> | null;
  was: string | null; // the entry that says it
  equipment: readonly { id: string; name: string }[];
  by: string;
  cannot: string | null;
};

const back = '/set-up/plan';
const steps = [...stepName.options.filter((step) => step !== 'gone'), 'probe_check'] as const;
const looks = ['watch_piece', 'thin_ends_and_every_second_thick', 'every_piece'] as const;

export function PlanForm({ known, was, equipment, by, cannot }: Props) {
  const t = useTranslations('setup.plan');
  const all = useTranslations('setup');
  const c = useTranslations('common');
  const [id] = useState(() => known?.plan ?? v7());
  const form = useThingForm({
    kind: 'plan',
    by,
    was,
    labels: {
      step: t('step'),
      every_min: t('every'),
      at_most_min: t('at_most'),
      checkpoints_min: t('checkpoints'),
      note: all('note'),
      equipment: t('where'),
      looks: t('looks'),
      spots: t('spots'),
    },
    after: back,
    start: planTyped(known),
    meaning: (typed) => planMeant(id, typed),
    also: (typed) => [
      ...(atMostBelowEvery(typed) ? [{ field: 'at_most_min', words: t('at_most_below') }] : []),
      ...(asksNothing(typed) ? [{ field: 'every_min', words: t('asks_nothing') }] : []),
    ],
  });
  return (
    <ThingFrame {...form} cannot={cannot} back={back}>
      <SelectField
        options={steps.map((value) => ({ value, words: c(`step.${value}`) }))}
        {...form.field('step')}
      />
      <PickGroup {...form.group('equipment')} hint={t('where_hint')} columns>
        {equipment.map((each) => (
          <Pick key={each.id} type="checkbox" title={each.name} {...form.pick('equipment', each.id)} />
        ))}
      </PickGroup>
      <TextField
        hint={t('every_hint')}
        inputMode="numeric"
        after={t('minutes')}
        {...form.field('every_min')}
      />
      <TextField
        hint={t('at_most_hint')}
        inputMode="numeric"
        after={t('minutes')}
        {...form.field('at_most_min')}
      />
      <TextField hint={t('checkpoints_hint')} {...form.field('checkpoints_min')} />
      <PickGroup {...form.group('looks')}>
        {looks.map((value) => (
          <Pick key={value} title={t(`look.${value}`)} {...form.pick('looks', value)} />
        ))}
      </PickGroup>
      <PickGroup {...form.group('spots')} hint={t('spots_hint')} columns>
        {spots.options.map((value) => (
          <Pick key={value} type="checkbox" title={c(`spot.${value}`)} {...form.pick('spots', value)} />
        ))}
      </PickGroup>
      <TextArea {...form.field('note')} />
      <Pick type="checkbox" title={all('active')} note={t('active_note')} {...form.tick('active')} />
    </ThingFrame>
  );
}
