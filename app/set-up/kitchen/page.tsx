import { getTranslations } from 'next-intl/server';
import { offeredLimits } from '../limits/offered.ts';
import { SetUpSheet } from '../SetUpSheet.tsx';
import { setUpPage } from '../set-up-page.ts';
import { KitchenForm } from './KitchenForm.tsx';
import { zones } from './zones.ts';

export default async function Page() {
  const { kitchen, by, cannot, was } = await setUpPage('manager');
  const t = await getTranslations('setup');
  return (
    <SetUpSheet
      title={t('kitchen.title')}
      back={{ href: '/set-up', words: t('title') }}
      cannot={cannot}
      words={['limits']}
    >
      {kitchen.site === null ? null : (
        <KitchenForm
          site={kitchen.site}
          was={was('site', 'site')}
          zones={zones(kitchen.site.zone)}
          offered={offeredLimits(kitchen)}
          made={[...kitchen.limits.values()].map(({ body }) => body)}
          by={by}
          cannot={cannot}
        />
      )}
    </SetUpSheet>
  );
}
