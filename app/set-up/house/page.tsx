import { getTranslations } from 'next-intl/server';
import { SetUpSheet } from '../SetUpSheet.tsx';
import { setUpPage } from '../set-up-page.ts';
import { HouseForm } from './HouseForm.tsx';

export default async function Page() {
  const { kitchen, by, cannot, was } = await setUpPage('manager');
  const t = await getTranslations('setup');
  return (
    <SetUpSheet title={t('house.title')} back={{ href: '/set-up', words: t('title') }} cannot={cannot}>
      {kitchen.site === null ? null : (
        <HouseForm site={kitchen.site} was={was('site', 'site')} by={by} cannot={cannot} />
      )}
    </SetUpSheet>
  );
}
