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
          <th scope="col">{c('spot.edge')}</th>
          <th scope="col">{c('spot.core')}</th>
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
            <td />
            <td />
            <td />
            <td />
          </tr>
        ))}
      </tbody>
    </table>
  );
}
