import { useTranslations } from 'next-intl';
import css from './page.module.css';
import type { PaperPlace } from './round-paper.ts';

/** One place of the walk: its pieces, and boxes to write in. The air is asked once. */
export function PlaceTable({ place }: { place: PaperPlace }) {
  const t = useTranslations('setup.paper');
  const c = useTranslations('common');
  const lines = place.lines.map((line, row) => ({ ...line, row }));
  return (
    <table className={css.table}>
      <caption>{place.name}</caption>
      <thead>
        <tr>
          <th scope="col" className={css.first}>
            {t('piece')}
          </th>
          <th scope="col">{t('time')}</th>
          <th scope="col">{c('spot.air')}</th>
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
            {row === 0 ? <td rowSpan={lines.length} /> : null}
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
