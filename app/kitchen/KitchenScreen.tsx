import type { ScreenGiven } from '#app/client/screen.ts';
import { kitchenNow } from '#lib/fold/kitchen-now.ts';
import { KitchenPhone } from './KitchenPhone.tsx';
import { KitchenWall } from './KitchenWall.tsx';
import css from './page.module.css';
import { StayFresh } from './StayFresh.tsx';
import type { KitchenView } from './view.ts';

type Props = { given: ScreenGiven; wall?: string | undefined };

/** What is in the kitchen, worst first. One page for the phone and for the tablet on the wall (`wall` 1 or 0 chooses). */
export function KitchenScreen({ given, wall }: Props) {
  const { book, site, locale } = given;
  const set = book.kitchen.site;
  const view: KitchenView = {
    book,
    now: kitchenNow(book),
    site,
    zone: set?.zone ?? 'UTC',
    clock: set?.clock ?? '24',
    unit: set?.unit ?? 'degF',
    lang: locale,
  };
  const layout = wall === '1' ? css.wallOnly : wall === '0' ? css.phoneOnly : css.byWidth;
  const fresh = <StayFresh site={site} zone={view.zone} clock={view.clock} asOf={view.now.asOf} />;
  return (
    <div className={layout}>
      <div className={css.phone}>
        <KitchenPhone view={view} fresh={fresh} />
      </div>
      <div className={css.wall}>
        <KitchenWall view={view} fresh={fresh} />
      </div>
    </div>
  );
}
