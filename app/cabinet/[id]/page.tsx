import { notFound } from 'next/navigation';
import { getLocale, getTranslations } from 'next-intl/server';
import { loadBookSince } from '#app/server/book.ts';
import { entrance } from '#app/server/session.ts';
import { type CabinetAsked, daysOf } from '../asked.ts';
import { CabinetScreen } from '../CabinetScreen.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('cabinet');
  return { title: t('title') };
}

type Props = { params: Promise<{ id: string }>; searchParams: Promise<CabinetAsked> };

export default async function CabinetPage({ params, searchParams }: Props) {
  const session = await entrance();
  const [{ id }, asked, locale] = await Promise.all([params, searchParams, getLocale()]);
  const book = await loadBookSince(session, daysOf(asked));
  const place = book.kitchen.equipment.get(id);
  if (place === undefined) notFound();
  return <CabinetScreen book={book} place={place} asked={asked} locale={locale === 'es' ? 'es' : 'en'} />;
}
