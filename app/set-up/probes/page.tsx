import { getTranslations } from 'next-intl/server';
import { SetUpSheet } from '../SetUpSheet.tsx';
import { setUpPage } from '../set-up-page.ts';
import { ThingList } from '../ThingList.tsx';

export default async function Page() {
  const { kitchen, cannot } = await setUpPage();
  const t = await getTranslations('setup');
  const c = await getTranslations('common');
  const things = [...kitchen.probes.values()].map(({ probe, name, colour, home, unit, active }) => ({
    id: probe,
    name,
    active,
    note: [t('probes.tag', { colour: c(`colour.${colour}`) }), c(`unit.${unit}`), home]
      .filter(Boolean)
      .join(', '),
  }));
  return (
    <SetUpSheet title={t('probes.title')} back={{ href: '/set-up', words: t('title') }} cannot={cannot}>
      <ThingList base="/set-up/probes" things={things} empty={t('probes.empty')} add={t('probes.add')} />
    </SetUpSheet>
  );
}
