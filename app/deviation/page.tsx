import { getTranslations } from 'next-intl/server';
import { screenGiven } from '#app/server/screen-given.ts';
import { DeviationsScreen } from './DeviationsScreen.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('deviation');
  return { title: t('title') };
}

export default async function DeviationsPage() {
  return <DeviationsScreen given={await screenGiven()} />;
}
