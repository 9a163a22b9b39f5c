'use client'; // a form
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { v7 } from 'uuid';
import { SelectField, TextField } from '#app/ui/Field.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import type { Body } from '#shared/entries/entry.ts';
import { probeColour } from '#shared/entries/probe.ts';
import { type Unit, unit as units } from '#shared/units.ts';
import { ThingFrame } from '../form/ThingFrame.tsx';
import { numberOrNull, shown, textOf, ticked, wordsOrNull } from '../form/typed-values.ts';
import { useThingForm } from '../form/useThingForm.ts';

type Props = {
  known: Body<'probe'> | null;
  was: string | null; // the entry that says it
  unit: Unit;
  by: string;
  cannot: string | null;
};

const back = '/set-up/probes';
const usualStep = '0.1'; // common practice: most pocket thermometers show tenths
const scales = ['degF', 'degC', 'both'] as const;

export function ProbeForm({ known, was, unit, by, cannot }: Props) {
  const t = useTranslations('setup.probes');
  const all = useTranslations('setup');
  const c = useTranslations('common');
  const [id] = useState(() => known?.probe ?? v7());
  const form = useThingForm({
    kind: 'probe',
    by,
    was,
    labels: {
      name: t('name'),
      colour: t('colour'),
      scale: t('scale'),
      step: t('step'),
      accuracy: t('accuracy'),
      type: t('type'),
      home: t('home'),
      unit: t('unit'),
    },
    after: back,
    start: {
      name: known?.name ?? '',
      colour: known?.colour ?? 'red',
      type: known?.type ?? '',
      scale: known?.scale ?? unit,
      unit: known?.unit ?? unit,
      step: known ? shown(known.step) : usualStep,
      accuracy: shown(known?.accuracy),
      home: known?.home ?? '',
      active: known?.active ?? true,
    },
    meaning: (typed) => ({
      probe: id,
      name: textOf(typed, 'name'),
      colour: textOf(typed, 'colour'),
      type: wordsOrNull(typed, 'type'),
      scale: textOf(typed, 'scale'),
      unit: textOf(typed, 'unit'),
      step: numberOrNull(typed, 'step'),
      accuracy: numberOrNull(typed, 'accuracy'),
      home: wordsOrNull(typed, 'home'),
      active: ticked(typed, 'active'),
    }),
  });
  return (
    <ThingFrame {...form} cannot={cannot} back={back}>
      <TextField big hint={t('name_hint')} autoComplete="off" {...form.field('name')} />
      <SelectField
        options={probeColour.options.map((value) => ({ value, words: c(`colour.${value}`) }))}
        {...form.field('colour')}
      />
      <PickGroup {...form.group('unit')} columns>
        {units.options.map((value) => (
          <Pick key={value} title={c(`unit.${value}`)} {...form.pick('unit', value)} />
        ))}
      </PickGroup>
      <SelectField
        hint={t('scale_hint')}
        options={scales.map((value) => ({ value, words: value === 'both' ? t('both') : c(`unit.${value}`) }))}
        {...form.field('scale')}
      />
      <TextField hint={t('step_hint')} inputMode="decimal" {...form.field('step')} />
      <TextField hint={t('accuracy_hint')} inputMode="decimal" {...form.field('accuracy')} />
      <TextField hint={t('type_hint')} {...form.field('type')} />
      <TextField {...form.field('home')} />
      <Pick type="checkbox" title={all('active')} note={t('active_note')} {...form.tick('active')} />
    </ThingFrame>
  );
}
