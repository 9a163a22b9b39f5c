'use client'; // a form
import { useTranslations } from 'next-intl';
import { TextField } from '#app/ui/Field.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import type { Body } from '#shared/entries/entry.ts';
import { ThingFrame } from '../form/ThingFrame.tsx';
import { numberOrNull, shown, textOf, ticked } from '../form/typed-values.ts';
import { useThingForm } from '../form/useThingForm.ts';

const who = ['manager', 'lead'] as const;

type Props = { site: Body<'site'>; was: string | null; by: string; cannot: string | null };

/** What the house allows after a deviation. The least that is chosen beforehand: a manager decides, nothing returns by itself. */
export function HouseForm({ site, was, by, cannot }: Props) {
  const t = useTranslations('setup.house');
  const c = useTranslations('common');
  const k = useTranslations('setup.kitchen');
  const form = useThingForm({
    kind: 'site',
    by,
    was,
    labels: {
      house_decide_within_min: t('decide_within'),
      house_reheat_within_min: t('reheat_within'),
      house_decides: t('decides'),
    },
    start: {
      house_decides: site.house.decides,
      house_decide_within_min: shown(site.house.decide_within_min),
      house_reheat_may_return: site.house.reheat_may_return,
      house_reheat_within_min: shown(site.house.reheat_within_min),
    },
    meaning: (typed) => ({
      ...site,
      house: {
        decides: textOf(typed, 'house_decides'),
        decide_within_min: numberOrNull(typed, 'house_decide_within_min'),
        reheat_may_return: ticked(typed, 'house_reheat_may_return'),
        reheat_within_min: numberOrNull(typed, 'house_reheat_within_min'),
      },
    }),
    also: (typed) =>
      ticked(typed, 'house_reheat_may_return') && textOf(typed, 'house_reheat_within_min') === ''
        ? [{ field: 'house_reheat_within_min', words: t('within_missing') }]
        : [],
  });
  return (
    <ThingFrame {...form} cannot={cannot} back="/set-up">
      <p>{t('intro')}</p>
      <PickGroup {...form.group('house_decides')} hint={t('decides_hint')}>
        {who.map((value) => (
          <Pick key={value} title={t(`decides_${value}`)} {...form.pick('house_decides', value)} />
        ))}
      </PickGroup>
      <TextField
        hint={t('decide_within_hint')}
        inputMode="numeric"
        after={k('minutes')}
        {...form.field('house_decide_within_min')}
      />
      <PickGroup label={t('reheat')} hint={t('reheat_hint')}>
        <Pick
          type="checkbox"
          title={t('reheat_may_return')}
          note={t('reheat_may_return_note')}
          {...form.tick('house_reheat_may_return')}
        />
      </PickGroup>
      <TextField
        hint={t('reheat_within_hint')}
        inputMode="numeric"
        after={k('minutes')}
        {...form.field('house_reheat_within_min')}
      />
      <p>{c('local_codes')}</p>
    </ThingFrame>
  );
}
