import { useTranslations } from 'next-intl';
import { length, temperature } from '#app/batch/said.ts';
import type { BatchView } from '#app/batch/view.ts';
import { assumed } from '#lib/between/assumed.ts';
import type { CoolingOutlook, CoolingTarget } from '#lib/between/cooling.ts';
import { reheatWay } from '#lib/between/reheat.ts';
import type { JudgedRun } from '#lib/fold/book.ts';
import { measuredCover } from '#lib/science/cover.ts';
import { CoolingChart } from './CoolingChart.tsx';
import { CoolingFigures } from './CoolingFigures.tsx';
import { useForecastSaid } from './forecast-said.ts';
import { outlookOf } from './outlook-of.ts';
import { type Say, siteOf, timeAt } from './said.ts';
import css from './science.module.css';

type Props = { view: BatchView; run: JudgedRun };

/** When a cooling passes its figures, with both deadlines; what can still be done by when; when to read next. */
export function CoolingForecast({ view, run }: Props) {
  const t = useTranslations('science.cooling');
  const found = outlookOf(view.book, run);
  if (found === null) return null;
  const ranges = found.targets.filter(({ expected }) => expected.say === 'range');
  const by = (how: string): boolean =>
    ranges.some(({ expected }) => expected.say === 'range' && expected.by === how);
  const moved = run.places.length > 1;
  return (
    <>
      <h3>{t('title')}</h3>
      {found.targets.map((target) => (
        <Target key={target.stage} view={view} found={found} target={target} />
      ))}
      <p className={css.note}>
        {[
          by('depth') ? t('by_depth') : by('readings') ? t('cover', measuredCover) : null,
          by('plain_curve') ? t('by_plain_curve') : null,
          found.piece === null ? null : t('piece', { number: found.piece }),
          moved ? t('since', { time: timeAt(found.since, siteOf(view)) }) : null,
        ]
          .filter((words) => words !== null)
          .join(' ')}
      </p>
      <CoolingChart view={view} found={found} />
      <Act view={view} found={found} />
      <CoolingFigures view={view} found={found} />
    </>
  );
}

function Target({ view, found, target }: { view: BatchView; found: CoolingOutlook; target: CoolingTarget }) {
  const said = useForecastSaid(siteOf(view));
  const warns = said.warning(target);
  return (
    <>
      <p className={css.big}>{said.line(found, target)}</p>
      {warns === null ? null : <p className={css.warns}>{warns}</p>}
    </>
  );
}

function Act({ view, found }: { view: BatchView; found: CoolingOutlook }) {
  const t = useTranslations('science.cooling');
  const say = useTranslations('common') as unknown as Say;
  const site = siteOf(view);
  const reheat = reheatWay(view.book, found);
  const figureOf = (stage: string): string => {
    const limit = found.targets.find((one) => one.stage === stage)?.limit;
    return limit === undefined ? '' : temperature(limit.value, limit.unit);
  };
  const depth = `${Number(Math.min(assumed.shallowIn, (found.depthIn ?? 4) / 2).toFixed(1))} in`;
  return (
    <>
      <h3>{t('act')}</h3>
      {found.ways.length === 0 ? (
        <p className={css.note}>{t('no_ways')}</p>
      ) : (
        <p className={css.note}>{t('way_help')}</p>
      )}
      <ul className={css.ways}>
        {found.ways.map(({ way, lastStart, target }) => (
          <li key={way}>
            {lastStart === null
              ? t(`way.${way}_late`, { figure: figureOf(target) })
              : t(`way.${way}`, { time: timeAt(lastStart, site), depth })}
          </li>
        ))}
        {reheat === null ? null : (
          <li>
            {reheat.to === null || reheat.withinMin === null
              ? t('reheat_bare', { time: timeAt(reheat.startBy, site) })
              : t('reheat', {
                  time: timeAt(reheat.startBy, site),
                  to: temperature(reheat.to.value, reheat.to.unit),
                  length: length(say, reheat.withinMin),
                })}{' '}
            {t('reheat_help')}
          </li>
        )}
        {found.next === null ? null : (
          <li>
            {t('next', { time: timeAt(found.next.at, site) })} {t(`why.${found.next.why}`)}
          </li>
        )}
      </ul>
    </>
  );
}
