import { getTranslations } from 'next-intl/server';
import { KitchenScreen } from '#app/kitchen/KitchenScreen.tsx';
import { screenGiven } from '#app/server/screen-given.ts';
import { Words } from '#app/ui/Words.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('common');
  return { title: t('kitchen_now') };
}

type Props = { searchParams: Promise<{ wall?: string; page?: string }> };

/** The first screen. */
export default async function KitchenPage({ searchParams }: Props) {
  const given = await screenGiven();
  const { wall } = await searchParams;
  return (
    <Words names={['kitchen', 'round']}>
      <KitchenScreen given={given} wall={wall} />
    </Words>
  );
}
