import { useTranslations } from 'next-intl';
import type { useTypedForm } from '#app/set-up/form/useTypedForm.ts';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import { startingEquipment, startingFoods, startingPlans, startingProbes } from '#shared/starting-values.ts';
import css from './page.module.css';

type Props = {
  typed: Pick<ReturnType<typeof useTypedForm>, 'group' | 'pick'>;
  language: 'en' | 'es';
};

/** What a barbecue kitchen usually has: tap away what this one has not. */
export function StartWithPart({ typed, language }: Props) {
  const t = useTranslations('setup.first_run');
  const c = useTranslations('common');
  const groups = [
    { name: 'equipment', things: startingEquipment.map(({ key, name }) => ({ key, words: name[language] })) },
    {
      name: 'probes',
      things: startingProbes.map(({ key, colour }) => ({ key, words: c(`colour.${colour}`) })),
    },
    { name: 'foods', things: startingFoods.map(({ key, name }) => ({ key, words: name[language] })) },
  ] as const;
  return (
    <>
      <h2 className={css.head}>{t('start_with')}</h2>
      <p className={css.notice}>{t('start_note')}</p>
      {groups.map(({ name, things }) => (
        <PickGroup key={name} {...typed.group(name)} columns>
          {things.map(({ key, words }) => (
            <Pick key={key} type="checkbox" title={words} {...typed.pick(name, key)} />
          ))}
        </PickGroup>
      ))}
      <PickGroup {...typed.group('plans')}>
        {startingPlans.map(({ key }) => (
          <Pick key={key} type="checkbox" title={t(`plan.${key}`)} {...typed.pick('plans', key)} />
        ))}
      </PickGroup>
    </>
  );
}
