import { useTranslations } from 'next-intl';
import { type Typed, textOf } from '#app/set-up/form/typed-values.ts';
import type { useTypedForm } from '#app/set-up/form/useTypedForm.ts';
import type { Offered } from '#app/set-up/limits/find-limits.ts';
import { SiteLimits } from '#app/set-up/limits/SiteLimits.tsx';
import { SelectField, TextField } from '#app/ui/Field.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import { unit as units } from '#shared/units.ts';
import css from './page.module.css';

type Props = {
  typed: Pick<ReturnType<typeof useTypedForm>, 'field' | 'group' | 'pick'>;
  zones: readonly string[];
  offered: readonly Offered[];
  now: Typed;
  choose: (profile: string) => void;
};

export function KitchenPart({ typed, zones, offered, now, choose }: Props) {
  const t = useTranslations('setup.first_run');
  const k = useTranslations('setup.kitchen');
  const c = useTranslations('common');
  const blank = { value: '', words: '' };
  return (
    <>
      <h2 className={css.head}>{t('kitchen')}</h2>
      <TextField big autoComplete="organization" {...typed.field('site_name')} />
      <PickGroup {...typed.group('site_unit')} columns>
        {units.options.map((value) => (
          <Pick key={value} title={c(`unit.${value}`)} {...typed.pick('site_unit', value)} />
        ))}
      </PickGroup>
      <SelectField
        hint={k('zone_hint')}
        options={[blank, ...zones.map((value) => ({ value, words: value }))]}
        {...typed.field('site_zone')}
      />
      <TextField hint={k('day_starts_hint')} type="time" {...typed.field('site_day_starts')} />
      <TextField
        hint={k('altitude_hint')}
        inputMode="decimal"
        after={textOf(now, 'site_unit') === 'degC' ? 'm' : 'ft'}
        {...typed.field('site_altitude_m')}
      />
      <SiteLimits
        {...typed.group('site_profile')}
        offered={offered}
        made={[]}
        chosen={textOf(now, 'site_profile')}
        onChoose={choose}
      />
    </>
  );
}
