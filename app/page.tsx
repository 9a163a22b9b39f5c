import { getLocale, getTranslations } from 'next-intl/server';
import { KitchenPhone } from '#app/kitchen/KitchenPhone.tsx';
import { KitchenWall } from '#app/kitchen/KitchenWall.tsx';
import css from '#app/kitchen/page.module.css';
import { StayFresh } from '#app/kitchen/StayFresh.tsx';
import type { KitchenView } from '#app/kitchen/view.ts';
import { loadBook } from '#app/server/book.ts';
import { entrance } from '#app/server/session.ts';
import { Words } from '#app/ui/Words.tsx';
import { kitchenNow } from '#lib/fold/kitchen-now.ts';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('common');
  return { title: t('kitchen_now') };
}

type Props = { searchParams: Promise<{ wall?: string; page?: string }> };

/** The first screen: what is in the kitchen, worst first. One page for the phone and for the tablet on the wall. */
export default async function KitchenPage({ searchParams }: Props) {
  const session = await entrance();
  const book = await loadBook(session);
  const asked = await searchParams;
  const site = book.kitchen.site;
  const view: KitchenView = {
    book,
    now: kitchenNow(book),
    site: session.site,
    zone: site?.zone ?? 'UTC',
    clock: site?.clock ?? '24',
    unit: site?.unit ?? 'degF',
    lang: (await getLocale()) === 'es' ? 'es' : 'en',
  };
  const layout = asked.wall === '1' ? css.wallOnly : asked.wall === '0' ? css.phoneOnly : css.byWidth;
  return (
    <div className={layout}>
      <Words names={['kitchen', 'round']}>
        <div className={css.phone}>
          <KitchenPhone view={view} fresh={<StayFresh site={session.site} {...clockOf(view)} />} />
        </div>
        <div className={css.wall}>
          <KitchenWall view={view} fresh={<StayFresh site={session.site} {...clockOf(view)} />} />
        </div>
      </Words>
    </div>
  );
}

const clockOf = ({ zone, clock, now }: KitchenView) => ({ zone, clock, asOf: now.asOf });
