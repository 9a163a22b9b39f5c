'use client'; // a form
import { useTranslations } from 'next-intl';
import { SelectField, TextArea, TextField } from '#app/ui/Field.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import type { Body } from '#shared/entries/entry.ts';
import { language as languages } from '#shared/entries/kind.ts';
import { degrees, unit as units } from '#shared/units.ts';
import { ThingFrame } from '../form/ThingFrame.tsx';
import { useThingForm } from '../form/useThingForm.ts';
import { heightUnitOf } from './altitude.ts';
import { kitchenMeant, kitchenTyped } from './kitchen-typed.ts';

type Props = {
  site: Body<'site'>;
  zones: readonly string[];
  profiles: readonly { id: string; name: string }[];
  by: string;
  cannot: string | null;
};

const weekdays = ['0', '1', '2', '3', '4', '5', '6'] as const;
const clocks = ['12', '24'] as const;
const papers = ['letter', 'a4'] as const;

export function KitchenForm({ site, zones, profiles, by, cannot }: Props) {
  const t = useTranslations('setup.kitchen');
  const c = useTranslations('common');
  const form = useThingForm({
    kind: 'site',
    by,
    start: kitchenTyped(site),
    meaning: (typed) => kitchenMeant(site, typed, site.unit),
  });
  return (
    <ThingFrame {...form} cannot={cannot} back="/set-up">
      <TextField big label={t('name')} autoComplete="organization" {...form.field('name')} />
      <TextField label={t('address')} {...form.field('address')} />
      <SelectField
        label={t('zone')}
        hint={t('zone_hint')}
        options={zones.map((value) => ({ value, words: value }))}
        {...form.field('zone')}
      />
      <TextField
        label={t('altitude')}
        hint={t('altitude_hint')}
        inputMode="decimal"
        after={heightUnitOf(site.unit)}
        {...form.field('altitude_m')}
      />
      <PickGroup label={t('unit')} hint={t('unit_hint')} columns error={form.errorOf('unit')}>
        {units.options.map((value) => (
          <Pick key={value} title={c(`unit.${value}`)} {...form.pick('unit', value)} />
        ))}
      </PickGroup>
      <PickGroup label={t('clock')} columns error={form.errorOf('clock')}>
        {clocks.map((value) => (
          <Pick key={value} title={t(`clock_${value}`)} {...form.pick('clock', value)} />
        ))}
      </PickGroup>
      <PickGroup label={t('language')} hint={t('language_hint')} columns error={form.errorOf('language')}>
        {languages.options.map((value) => (
          <Pick key={value} title={c(`language.${value}`)} {...form.pick('language', value)} />
        ))}
      </PickGroup>
      <TextField
        label={t('day_starts')}
        hint={t('day_starts_hint')}
        type="time"
        {...form.field('day_starts')}
      />
      <PickGroup label={t('closed_weekdays')} columns error={form.errorOf('closed_weekdays')}>
        {weekdays.map((value) => (
          <Pick
            key={value}
            type="checkbox"
            title={c(`weekday.${value}`)}
            {...form.pick('closed_weekdays', value)}
          />
        ))}
      </PickGroup>
      <TextArea label={t('closed_on')} hint={t('closed_on_hint')} {...form.field('closed_on')} />
      <SelectField
        label={t('profile')}
        hint={t('profile_notice')}
        options={profiles.map(({ id, name }) => ({ value: id, words: name }))}
        {...form.field('profile')}
      />
      <TextField
        label={t('late_after')}
        hint={t('late_after_hint')}
        inputMode="numeric"
        after={t('minutes')}
        {...form.field('late_after_min')}
      />
      <TextField
        label={t('odd_above')}
        hint={t('odd_above_hint')}
        inputMode="decimal"
        after={degrees(site.unit)}
        {...form.field('odd_above')}
      />
      <PickGroup label={t('paper')} columns error={form.errorOf('paper')}>
        {papers.map((value) => (
          <Pick key={value} title={t(`paper_${value}`)} {...form.pick('paper', value)} />
        ))}
      </PickGroup>
    </ThingFrame>
  );
}
