import { useTranslations } from 'next-intl';
import { Computed } from '#app/science/Computed.tsx';
import { type CabinetChart, LEAST } from '#lib/between/cabinet-chart.ts';
import type { CabinetRecord } from '#lib/between/cabinet-record.ts';
import css from './cabinet.module.css';
import { type CabinetView, dayOf, differenceOf, figureOf, momentOf } from './view.ts';

type Props = { record: CabinetRecord; chart: CabinetChart; view: CabinetView };

/** What is usual here, and the limits of its own, open to how they were worked out. */
export function UsualSaid({ record, chart: { control }, view }: Props) {
  const t = useTranslations('cabinet.control');
  const figure = (degF: number): string => figureOf(view, degF);
  const few = record.readings.length < LEAST;
  return (
    <section className={css.part}>
      <h2>{t('title')}</h2>
      {control === null ? (
        <p>{few ? t('few', { least: LEAST, count: record.readings.length }) : t('level')}</p>
      ) : (
        <>
          <p>
            {t('said', { mean: figure(control.mean), low: figure(control.low), high: figure(control.high) })}
          </p>
          {(['low', 'high'] as const).map((end) => (
            <Computed
              key={end}
              words={t(end)}
              figure={figure(control[end])}
              inputs={[
                { words: t('in_count'), value: control.from },
                { words: t('in_mean'), value: figure(control.mean) },
                { words: t('in_step'), value: differenceOf(view, control.sigmaNaive) },
                { words: t('in_alike'), value: control.r1.toFixed(2) },
              ]}
              formula={`m ${end === 'low' ? '−' : '+'} 3 · max(1, 1/√(1 − r1)) · mean|x_i − x_(i−1)|/1.128`}
              source={t('source')}
              use="W"
              note={t('note', {
                count: control.from,
                naive: figure(control.mean + (end === 'low' ? -3 : 3) * control.sigmaNaive),
              })}
            />
          ))}
        </>
      )}
    </section>
  );
}

/** What each rule saw, in words; nothing is said too. */
export function RulesSaid({ chart: { rules }, view }: Omit<Props, 'record'>) {
  const t = useTranslations('cabinet.rules');
  if (rules.length === 0) return null;
  return (
    <section className={css.part}>
      <h2>{t('title')}</h2>
      <dl className={css.rules}>
        {rules.map(({ rule, at }) => {
          const last = at.at(-1);
          return (
            <div key={rule}>
              <dt>{t(rule)}</dt>
              <dd>
                {last === undefined ? (
                  t('none')
                ) : (
                  <>
                    <b>
                      {t('saw', {
                        count: at.length,
                        last: momentOf(view, last.at),
                        figure: figureOf(view, last.value),
                      })}
                    </b>{' '}
                    {t(`means.${rule}`)}
                  </>
                )}
              </dd>
            </div>
          );
        })}
      </dl>
      <p className={css.note}>{t('note')}</p>
    </section>
  );
}

/** Where it is going, and the day on which it would be at the operating limit. */
export function DriftSaid({ record, chart: { drift }, view }: Props) {
  const t = useTranslations('cabinet.drift');
  const { limit, readings } = record;
  const slope = drift === null ? '' : differenceOf(view, drift.perDay, true);
  const says = (): string => {
    if (drift === null) return t('few', { least: LEAST });
    if (!drift.shown) return t('none', { slope, error: differenceOf(view, 2 * drift.errorPerDay) });
    return drift.towardLimit ? t('toward', { slope }) : t('away', { slope });
  };
  return (
    <section className={css.part}>
      <h2>{t('title')}</h2>
      <p>{says()}</p>
      {drift?.shown && drift.towardLimit && limit !== null ? (
        <p className={css.tool}>
          {drift.crossesAt !== null
            ? t('crosses', { limit: figureOf(view, limit.degF), day: dayOf(view, drift.crossesAt) })
            : t(drift.passed ? 'passed' : 'far', { limit: figureOf(view, limit.degF) })}
        </p>
      ) : null}
      {drift === null ? null : (
        <Computed
          words={t('figure')}
          figure={slope}
          inputs={[
            { words: t('in_count'), value: readings.length },
            { words: t('in_error'), value: differenceOf(view, drift.errorPerDay) },
            {
              words: t('in_limit'),
              value: limit === null ? '–' : `${figureOf(view, limit.degF)}, ${limit.figure.section}`,
            },
          ]}
          formula="y = a + b t; t = (L − a)/b; se·√((1 + r1)/(1 − r1))"
          source={t('source')}
          use="W"
          note={t('note')}
        />
      )}
    </section>
  );
}
