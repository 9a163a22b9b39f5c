import { getTranslations } from 'next-intl/server';
import { Lost } from '#app/ui/Lost.tsx';

export async function generateMetadata() {
  const t = await getTranslations('parts.no_page');
  return { title: t('title') };
}

/** Any address that is none of the book's. */
export default function NotFound() {
  return <Lost why="no_page" />;
}
