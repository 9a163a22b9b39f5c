import { useTranslations } from 'next-intl';
import { Computed } from '#app/science/Computed.tsx';
import { type CabinetChart, SMOOTH, SUM, type SumSide } from '#lib/between/cabinet-chart.ts';
import type { CabinetRecord } from '#lib/between/cabinet-record.ts';
import css from './cabinet.module.css';
import { type CabinetView, differenceOf, figureOf, momentOf } from './view.ts';

type Props = { record: CabinetRecord; chart: CabinetChart; view: CabinetView };

/** What the smoothed level and the sums of small departures saw: shifts too small for a single reading to show. */
export function SlowSaid(props: Props) {
  const t = useTranslations('cabinet.slow');
  if (props.chart.control === null) return null;
  return (
    <section className={css.part}>
      <h2>{t('title')}</h2>
      <p className={css.note}>{t('help')}</p>
      <SmoothedSaid {...props} />
      <SumsSaid {...props} />
    </section>
  );
}

function SmoothedSaid({ chart: { control, smoothed }, view }: Props) {
  const t = useTranslations('cabinet.slow');
  const now = smoothed?.levels.at(-1);
  if (control === null || smoothed === null || now === undefined) return null;
  const figure = (degF: number): string => figureOf(view, degF);
  const last = smoothed.out.at(-1);
  return (
    <>
      <p>
        {t('smoothed', { now: figure(now.level), low: figure(smoothed.low), high: figure(smoothed.high) })}{' '}
        {last === undefined ? (
          t('smoothed_in')
        ) : (
          <b>{t('smoothed_out', { count: smoothed.out.length, last: momentOf(view, last.at) })}</b>
        )}
      </p>
      <Computed
        words={t('figure_smoothed')}
        figure={figure(now.level)}
        inputs={[
          { words: t('in_mean'), value: figure(control.mean) },
          { words: t('in_spread'), value: differenceOf(view, control.sigma) },
          { words: t('in_alike'), value: control.r1.toFixed(2) },
          { words: t('in_weight'), value: SMOOTH.lambda },
          { words: t('in_count'), value: smoothed.levels.length },
        ]}
        formula={`e_i = x_i − m − r1 (x_(i−1) − m); z_i = λ e_i + (1 − λ) z_(i−1); m + z/(1 − r1); ± ${SMOOTH.reach} σ√(1 − r1²)·√(λ/(2 − λ))/(1 − r1)`}
        source={t('source_smoothed')}
        use="W"
        note={t('note_smoothed')}
      />
    </>
  );
}

function SumsSaid({ record: { side }, chart: { control, sums }, view }: Props) {
  const t = useTranslations('cabinet.slow');
  if (control === null || sums === null) return null;
  const toward = side === 'hot' ? 'below' : 'above';
  const ways = toward === 'below' ? (['below', 'above'] as const) : (['above', 'below'] as const);
  return ways.map((way) => (
    <div key={way}>
      <p>
        <SumSaid way={way} sum={sums[way]} toward={way === toward} view={view} />
      </p>
      <Computed
        words={t('figure_sum', { way })}
        figure={differenceOf(view, sums[way].now)}
        inputs={[
          { words: t('in_sum_limit'), value: differenceOf(view, sums.limit) },
          { words: t('in_slack'), value: differenceOf(view, sums.slack) },
          { words: t('in_mean'), value: figureOf(view, control.mean) },
          { words: t('in_alike'), value: control.r1.toFixed(2) },
        ]}
        formula={`e_i = x_i − m − r1 (x_(i−1) − m); s_i = max(0, s_(i−1) ${way === 'above' ? '+' : '−'} e_i − ${SUM.slack} σ_e); σ_e = σ√(1 − r1²); > ${SUM.limit} σ_e`}
        source={t('source_sum')}
        use="W"
        note={t('note_sum')}
      />
    </div>
  ));
}

type SaidProps = { way: 'above' | 'below'; sum: SumSide; toward: boolean; view: CabinetView };

function SumSaid({ way, sum: { at, began }, toward, view }: SaidProps) {
  const t = useTranslations('cabinet.slow');
  const last = at.at(-1);
  if (last === undefined || began === null) return t('sum_none', { way });
  return (
    <b>
      {t('sum', { way, count: at.length, began: momentOf(view, began), last: momentOf(view, last.at) })}{' '}
      {t(toward ? 'toward' : 'away')}
    </b>
  );
}
