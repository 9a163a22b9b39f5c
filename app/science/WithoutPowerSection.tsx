import { useTranslations } from 'next-intl';
import { length } from '#app/batch/said.ts';
import type { BatchView } from '#app/batch/view.ts';
import { assumed } from '#lib/between/assumed.ts';
import { withoutPower } from '#lib/between/no-power.ts';
import type { JudgedRun } from '#lib/fold/book.ts';
import { Computed } from './Computed.tsx';
import { sizeSaid } from './HoldLevels.tsx';
import { degreesF, rough, type Say, siteOf, timeAt, widthF } from './said.ts';
import css from './science.module.css';

/** For how long a batch keeps above its limit in a cabinet without power, at least: of the core, and no more. */
export function WithoutPowerSection({ view, run }: { view: BatchView; run: JudgedRun }) {
  const t = useTranslations('science');
  const say = useTranslations('common') as unknown as Say;
  const found = withoutPower(view.book, run);
  if (found === null) return null;
  if (!found.has)
    return (
      <>
        <h3>{t('no_power.title')}</h3>
        <p className={css.note}>{t(`no_power.${found.lacks}`)}</p>
      </>
    );
  const site = siteOf(view);
  const limit = degreesF(found.limit, site.unit);
  const time = timeAt(found.until, site);
  const piece =
    found.piece === null ? t('no_power.the_food') : t('no_power.the_piece', { number: found.piece });
  return (
    <>
      <h3>{t('no_power.title')}</h3>
      <p className={css.big}>
        {found.until <= site.now ? t('no_power.gone', { time }) : t('no_power.say', { piece, limit, time })}
      </p>
      <p className={css.note}>{t('no_power.thin')}</p>
      <Computed
        words={t('no_power.figure')}
        figure={length(say, found.hours * 60)}
        inputs={[
          {
            words: t('input.last_core', { time: timeAt(found.last.at, site) }),
            value: `${degreesF(found.last.value, site.unit)} ${widthF(found.last.u, site.unit)}`,
          },
          { words: t('input.limit'), value: limit },
          { words: t('input.room'), value: degreesF(assumed.coldestRoom, site.unit) },
          { words: t('input.size'), value: sizeSaid(view, run) },
          { words: t('input.k_max'), value: `${rough(found.kMax)} 1/h` },
        ]}
        formula="t = ln((T − u − Ta)/(L − Ta))/k"
        source={t('source.bounds')}
        use="S"
        note={t('level.core_only')}
      />
    </>
  );
}
