import { useTranslations } from 'next-intl';
import css from './page.module.css';
import type { PaperPlace } from './round-paper.ts';

/** One place of the walk: its pieces, and boxes to write in. The air is asked once, beside its name. */
export function PlaceTable({ place }: { place: PaperPlace }) {
  const t = useTranslations('setup.paper');
  const c = useTranslations('common');
  const lines = place.lines.map((line, row) => ({ ...line, row }));
  return (
    <table className={css.table}>
      <caption>
        <span className={css.place}>
          {place.name}
          <span className={css.air}>{c('spot.air')}</span>
        </span>
      </caption>
      <thead>
        <tr>
          <th scope="col" className={css.first}>
            {/* said again, for a table that goes on over the page */}
            {place.name}: {t('piece')}
          </th>
          <th scope="col">{t('time')}</th>
          {place.spots.map((spot) => (
            <th key={spot} scope="col">
              {c(`spot.${spot}`)}
            </th>
          ))}
          <th scope="col">{t('thermometer')}</th>
          <th scope="col">{t('initials')}</th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ row, batch, food, piece }) => (
          <tr key={row}>
            <th scope="row" className={css.first}>
              {batch === null ? null : (
                <>
                  {[batch, piece].filter((part) => part !== null).join(' · ')} <small>{food}</small>
                </>
              )}
            </th>
            <td />
            {place.spots.map((spot) => (
              <td key={spot} />
            ))}
            <td />
            <td />
          </tr>
        ))}
      </tbody>
    </table>
  );
}
