'use client'; // a form
import { useTranslations } from 'next-intl';
import { SelectField, TextArea, TextField } from '#app/ui/Field.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import type { Body } from '#shared/entries/entry.ts';
import { language as languages } from '#shared/entries/kind.ts';
import { degrees, unit as units } from '#shared/units.ts';
import { ThingFrame } from '../form/ThingFrame.tsx';
import { textOf } from '../form/typed-values.ts';
import { useThingForm } from '../form/useThingForm.ts';
import type { Offered } from '../limits/find-limits.ts';
import { SiteLimits } from '../limits/SiteLimits.tsx';
import { heightUnitOf } from './altitude.ts';
import { kitchenMeant, kitchenTyped } from './kitchen-typed.ts';

type Props = {
  site: Body<'site'>;
  was: string | null; // the entry that says it
  zones: readonly string[];
  offered: readonly Offered[];
  made: readonly Body<'limits'>[];
  by: string;
  cannot: string | null;
};

const weekdays = ['0', '1', '2', '3', '4', '5', '6'] as const;
const clocks = ['12', '24'] as const;
const papers = ['letter', 'a4'] as const;

export function KitchenForm({ site, was, zones, offered, made, by, cannot }: Props) {
  const t = useTranslations('setup.kitchen');
  const c = useTranslations('common');
  const l = useTranslations('limits.pick');
  const form = useThingForm({
    kind: 'site',
    by,
    was,
    labels: {
      name: t('name'),
      address: t('address'),
      zone: t('zone'),
      altitude_m: t('altitude'),
      day_starts: t('day_starts'),
      closed_on: t('closed_on'),
      profile: t('profile'),
      late_after_min: t('late_after'),
      odd_above: t('odd_above'),
      unit: t('unit'),
      clock: t('clock'),
      language: t('language'),
      closed_weekdays: t('closed_weekdays'),
      paper: t('paper'),
    },
    start: kitchenTyped(site),
    meaning: (typed) => kitchenMeant(site, typed, site.unit),
  });
  const chosen = textOf(form.form.watch(), 'profile');
  const own = made.find(({ limits }) => limits === site.profile);
  const nameOf = (id: string) => offered.find((one) => one.id === id)?.name ?? id;
  return (
    <ThingFrame {...form} cannot={cannot} back="/set-up">
      <TextField big autoComplete="organization" {...form.field('name')} />
      <TextField {...form.field('address')} />
      <SelectField
        hint={t('zone_hint')}
        options={zones.map((value) => ({ value, words: value }))}
        {...form.field('zone')}
      />
      <TextField
        hint={t('altitude_hint')}
        inputMode="decimal"
        after={heightUnitOf(site.unit)}
        {...form.field('altitude_m')}
      />
      <PickGroup {...form.group('unit')} hint={t('unit_hint')} columns>
        {units.options.map((value) => (
          <Pick key={value} title={c(`unit.${value}`)} {...form.pick('unit', value)} />
        ))}
      </PickGroup>
      <PickGroup {...form.group('clock')} columns>
        {clocks.map((value) => (
          <Pick key={value} title={t(`clock_${value}`)} {...form.pick('clock', value)} />
        ))}
      </PickGroup>
      <PickGroup {...form.group('language')} hint={t('language_hint')} columns>
        {languages.options.map((value) => (
          <Pick key={value} title={c(`language.${value}`)} {...form.pick('language', value)} />
        ))}
      </PickGroup>
      <TextField hint={t('day_starts_hint')} type="time" {...form.field('day_starts')} />
      <PickGroup {...form.group('closed_weekdays')} columns>
        {weekdays.map((value) => (
          <Pick
            key={value}
            type="checkbox"
            title={c(`weekday.${value}`)}
            {...form.pick('closed_weekdays', value)}
          />
        ))}
      </PickGroup>
      <TextArea hint={t('closed_on_hint')} {...form.field('closed_on')} />
      <SiteLimits
        {...form.group('profile')}
        offered={offered}
        made={made}
        chosen={chosen}
        onChoose={(id) => form.form.setValue('profile', id, { shouldDirty: true })}
      />
      {own && chosen !== own.limits ? <p>{l('own_left', { parent: nameOf(own.extends) })}</p> : null}
      <TextField
        hint={t('late_after_hint')}
        inputMode="numeric"
        after={t('minutes')}
        {...form.field('late_after_min')}
      />
      <TextField
        hint={t('odd_above_hint')}
        inputMode="decimal"
        after={degrees(site.unit)}
        {...form.field('odd_above')}
      />
      <PickGroup {...form.group('paper')} columns>
        {papers.map((value) => (
          <Pick key={value} title={t(`paper_${value}`)} {...form.pick('paper', value)} />
        ))}
      </PickGroup>
    </ThingFrame>
  );
}
