import { getTranslations } from 'next-intl/server';
import { SetUpSheet } from '../SetUpSheet.tsx';
import { setUpPage } from '../set-up-page.ts';
import { ThingList } from '../ThingList.tsx';

export default async function Page() {
  const { kitchen, cannot } = await setUpPage();
  const t = await getTranslations('setup');
  const c = await getTranslations('common');
  const things = [...kitchen.people.values()].map(
    ({ person, name, initials, role, title, on_call, active }) => ({
      id: person,
      name: `${initials} · ${name}`,
      active,
      note: [c(`role.${role}`), title, on_call ? t('people.called') : ''].filter(Boolean).join(', '),
    }),
  );
  return (
    <SetUpSheet title={t('people.title')} back={{ href: '/set-up', words: t('title') }} cannot={cannot}>
      <ThingList base="/set-up/people" things={things} empty={t('people.empty')} add={t('people.add')} />
    </SetUpSheet>
  );
}
