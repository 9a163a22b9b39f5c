import { useTranslations } from 'next-intl';
import type { BatchView } from '#app/batch/view.ts';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { restPlan } from '#lib/between/rest.ts';
import type { JudgedRun } from '#lib/fold/book.ts';
import { Computed } from './Computed.tsx';
import { sizeSaid } from './HoldLevels.tsx';
import { degreesF, siteOf, timeAt, widthF } from './said.ts';
import css from './science.module.css';

/** The rest planner: when the core is where it goes into the cabinet, from readings or from the size of the piece. */
export function RestSection({ view, run }: { view: BatchView; run: JudgedRun }) {
  const t = useTranslations('science');
  const found = restPlan(view.book, run);
  if (found === null) return null;
  const site = siteOf(view);
  const target = degreesF(found.target, site.unit);
  const last = found.readings.at(-1);
  const already = last !== undefined && last.value <= found.target;
  const earliest = found.earliest === null ? null : timeAt(found.earliest, site);
  const latest = found.latest === null ? null : timeAt(found.latest, site, 'up');
  const range = earliest === null ? null : `${earliest} – ${latest ?? '…'}`;
  return (
    <>
      <h3>{t('rest.title', { target })}</h3>
      <p className={css.big}>
        {already
          ? t('rest.already', { target })
          : earliest === null
            ? t('rest.nothing')
            : latest === null
              ? t('rest.no_end', { target, earliest })
              : t('rest.range', { target, earliest, latest })}
      </p>
      <p className={css.note}>
        {already
          ? null
          : t('rest.from', { basis: found.from.basis, value: degreesF(found.from.value, site.unit) })}{' '}
        {t('rest.help', { target })}
      </p>
      {found.sides === null && found.by === 'nothing' ? (
        <div className={css.keys}>
          <KeyLink href={`/batch/${view.batch.id}/next?to=rest`}>{t('level.write_size')}</KeyLink>
        </div>
      ) : null}
      {already || range === null ? null : (
        <Computed
          words={t('rest.figure', { target })}
          figure={range}
          inputs={[
            ...(found.by === 'readings'
              ? found.readings.slice(-2).map(({ at, value, u }) => ({
                  words: t('input.reading', { time: timeAt(at, site) }),
                  value: `${degreesF(value, site.unit)} ${widthF(u, site.unit)}`,
                }))
              : [
                  {
                    words: t('input.started'),
                    value: `${degreesF(found.from.value, site.unit)}, ${timeAt(found.from.at, site)}`,
                  },
                  { words: t('input.size'), value: sizeSaid(view, run) },
                  { words: t('input.surface'), value: '7 … 10 W/m²K' },
                  { words: t('input.spread'), value: '± 30 %' },
                ]),
            {
              words: t('input.air'),
              value: `${degreesF(found.air.value, site.unit)} ${widthF(found.air.within, site.unit)}, ${t('input.air_basis', { basis: found.air.basis })}`,
            },
          ]}
          formula={
            found.by === 'readings'
              ? 'r = log10((y1 − Ta)/(y2 − Ta))/dt; t = t2 + log10((y2 − Ta)/(160 − Ta))/r; least and greatest over y1 ± u, y2 ± u, Ta ± ua'
              : 'θ(t) = Π slab(d_i/2) = (160 − Ta)/(T − Ta); k 0.5 W/mK, α 1.4e-7 m²/s'
          }
          source={t(found.by === 'readings' ? 'source.rest' : 'source.brick')}
          use="W"
        />
      )}
    </>
  );
}
