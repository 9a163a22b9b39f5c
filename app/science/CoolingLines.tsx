import { useTranslations } from 'next-intl';
import type { CoolingOutlook } from '#lib/between/cooling.ts';
import { reheatWay } from '#lib/between/reheat.ts';
import type { Book } from '#lib/fold/book.ts';
import { isEarlyMiss, useForecastSaid } from './forecast-said.ts';
import { type Site, timeAt } from './said.ts';
import css from './science.module.css';

/** The forecast of one cooling in few lines: each figure with its deadline, what is warned of, what can still be done. */
export function CoolingLines({ book, found, site }: { book: Book; found: CoolingOutlook; site: Site }) {
  const t = useTranslations('science.cooling');
  const said = useForecastSaid(site);
  const misses = found.targets.some(
    ({ standing }) => standing === 'probably_misses' || standing === 'may_miss',
  );
  const reheat = found.targets.some(({ standing }) => standing === 'probably_misses')
    ? reheatWay(book, found)
    : null;
  const open = found.ways.flatMap(({ way, lastStart }) => (lastStart === null ? [] : [{ way, lastStart }]));
  return (
    <div className={css.lines}>
      {found.targets.map((target) => {
        const warns = said.warning(target);
        return (
          <p key={target.stage}>
            <span className={css.tool}>{said.line(found, target)}</span>
            {warns === null ? null : <b className={css.warns}> {warns}</b>}
          </p>
        );
      })}
      {isEarlyMiss(found, site.now) ? <p className={css.warns}>{t('early')}</p> : null}
      {misses && open.length > 0 ? (
        <p className={css.tool}>
          {open
            .map(({ way, lastStart }) =>
              t('way_short', { way: t(`way_name.${way}`), time: timeAt(lastStart, site) }),
            )
            .join('; ')}
        </p>
      ) : null}
      {reheat === null ? null : (
        <p className={css.tool}>
          {t('reheat_bare', { time: timeAt(reheat.startBy, site) })} {t('reheat_help')}
        </p>
      )}
      {found.next === null ? null : (
        <p className={css.tool}>{t('next', { time: timeAt(found.next.at, site) })}</p>
      )}
    </div>
  );
}
