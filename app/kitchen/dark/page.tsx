import { getTranslations } from 'next-intl/server';
import { DarkScreen } from '#app/science/DarkScreen.tsx';
import { screenGiven } from '#app/server/screen-given.ts';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('science.dark');
  return { title: t('title') };
}

export default async function DarkPage() {
  return <DarkScreen given={await screenGiven()} />;
}
