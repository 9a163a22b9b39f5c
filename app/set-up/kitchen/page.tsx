import { getTranslations } from 'next-intl/server';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import { SetUpSheet } from '../SetUpSheet.tsx';
import { setUpPage } from '../set-up-page.ts';
import { KitchenForm } from './KitchenForm.tsx';
import { zones } from './zones.ts';

export default async function Page() {
  const { kitchen, by, cannot } = await setUpPage('manager');
  const t = await getTranslations('setup');
  const profiles = profileIds.map((id) => ({ id, name: profile(id)?.name ?? id }));
  return (
    <SetUpSheet title={t('kitchen.title')} back={{ href: '/set-up', words: t('title') }} cannot={cannot}>
      {kitchen.site === null ? null : (
        <KitchenForm
          site={kitchen.site}
          zones={zones(kitchen.site.zone)}
          profiles={profiles}
          by={by}
          cannot={cannot}
        />
      )}
    </SetUpSheet>
  );
}
