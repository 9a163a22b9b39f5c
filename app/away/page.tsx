import { getTranslations } from 'next-intl/server';
import { Words } from '#app/ui/Words.tsx';
import { AwayLoader } from './AwayLoader.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('common');
  return { title: t('kitchen_now') };
}

/**
 * What the phone's worker shows for any address while nothing answers. It holds no kitchen and asks for no
 * session: everything comes from this phone's own store.
 */
export default function AwayPage() {
  return (
    <Words names={['kitchen']}>
      <AwayLoader />
    </Words>
  );
}
