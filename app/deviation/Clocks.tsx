import { useTranslations } from 'next-intl';
import { length, type Say, temperature, timeSaid } from '#app/batch/said.ts';
import type { JudgedRun } from '#lib/fold/book.ts';
import { restsOn } from '#lib/fold/rests-on.ts';
import css from './deviation.module.css';
import { reheatClocks } from './reheat-clocks.ts';
import { type DeviationView, reheatFigures } from './view.ts';

/** Both clocks of a corrective reheat, from the last good look and from the finding. Neither decides. */
export function Clocks({ view, run }: { view: DeviationView; run: JudgedRun }) {
  const t = useTranslations('deviation.clocks');
  const say = useTranslations('common') as unknown as Say;
  const { deviation } = view;
  const figures = reheatFigures(view.book);
  if (figures === null) return null;
  const stage = run.stages.temperature;
  const reached = stage?.verdict === 'kept' ? (restsOn(run, stage).at(-1)?.at ?? null) : null;
  const clocks = reheatClocks(
    deviation.lastGood?.at ?? null,
    deviation.foundAt,
    reached ?? run.end ?? view.now,
  );
  const target = temperature(figures.limit.value, figures.limit.unit);
  return (
    <div className={css.part}>
      <h3>{t('title')}</h3>
      <p>{t('target', { target })}</p>
      <div className={css.out}>
        <p className={css.row}>
          <span>{t('last_good')}</span>
          <span className={css.length}>
            {clocks.fromLastGoodMin === null ? t('unknown') : length(say, clocks.fromLastGoodMin, 'up')}
          </span>
        </p>
        <p className={css.row}>
          <span>{t('finding')}</span>
          <span className={css.length}>{length(say, clocks.fromFindingMin, 'up')}</span>
        </p>
        <p className={css.soft}>
          {reached === null
            ? t('target_not', { target })
            : t('target_seen', { target, time: timeSaid(reached, view) })}
        </p>
      </div>
      <p className={css.note}>{t('neither', { within: length(say, figures.withinMin) })}</p>
    </div>
  );
}
