import { getTranslations } from 'next-intl/server';
import { degrees } from '#shared/units.ts';
import { SetUpSheet } from '../SetUpSheet.tsx';
import { setUpPage } from '../set-up-page.ts';
import { ThingList } from '../ThingList.tsx';

export default async function Page() {
  const { kitchen, cannot } = await setUpPage();
  const t = await getTranslations('setup');
  const c = await getTranslations('common');
  const things = [...kitchen.equipment.values()].map(({ equipment, name, kind, set, active }) => ({
    id: equipment,
    name,
    active,
    note: [
      c(`equipment.${kind}`),
      set ? t('equipment.set_to', { figure: `${set.value} ${degrees(set.unit)}` }) : '',
    ]
      .filter(Boolean)
      .join(', '),
  }));
  return (
    <SetUpSheet title={t('equipment.title')} back={{ href: '/set-up', words: t('title') }} cannot={cannot}>
      <ThingList
        base="/set-up/equipment"
        things={things}
        empty={t('equipment.empty')}
        add={t('equipment.add')}
      />
    </SetUpSheet>
  );
}
