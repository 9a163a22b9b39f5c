import { getLocale, getTranslations } from 'next-intl/server';
import { loadBook } from '#app/server/book.ts';
import { entrance } from '#app/server/session.ts';
import { Words } from '#app/ui/Words.tsx';
import { givenRound } from './given-round.ts';
import { Round } from './Round.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('round');
  return { title: t('title') };
}

type Props = { searchParams: Promise<{ round?: string; batch?: string; at?: string; only?: string }> };

/**
 * The round: what is open now, in the order of the walk. `round` goes on with one that was begun; `batch` (with
 * `only`) leaves in the looks of one batch, as the cooling screen asks for; `at` asks every piece of one place.
 */
export default async function RoundPage({ searchParams }: Props) {
  const session = await entrance();
  const book = await loadBook(session);
  const lang = (await getLocale()) === 'es' ? 'es' : 'en';
  const given = givenRound(book, session, lang, await searchParams, await getTranslations('round'));
  return (
    <Words names={['round', 'common']}>
      <Round given={given} />
    </Words>
  );
}
