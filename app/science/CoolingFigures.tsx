import { useTranslations } from 'next-intl';
import { length, temperature } from '#app/batch/said.ts';
import type { BatchView } from '#app/batch/view.ts';
import type { CoolingOutlook } from '#lib/between/cooling.ts';
import { measuredCover } from '#lib/science/cover.ts';
import { ASSUMED } from '#lib/science/forecast.ts';
import { Computed } from './Computed.tsx';
import { degreesF, rough, type Say, siteOf, timeAt } from './said.ts';

type Props = { view: BatchView; found: CoolingOutlook };
type Input = { words: string; value: string };

const formulas = {
  depth:
    'θ(t) = Σ C·e^(−μ² α t/L²) = (T − Ta)/(T1 − Ta); L = depth/2; μ tan μ = hL/k; k 0.5 W/mK, α 1.4e-7 m²/s',
  readings:
    'y = Ta + (y1 − Ta)·θ_j(k t); weights e^(−½ Σ(y − pred)²/(s² + s_model²) − ½ z²) over j, k, Ta; 5 % … 95 %',
  plain_curve:
    'y = Ta + A·e^(−k t); t = ln(A/(T − Ta))/k; ends where the best curve forced through T fits worse by χ² = 3.84, then 6 % wider; asked from Fo = α t/L² ≥ 0.2 on',
} as const;

/** Every figure of a cooling, open to what went in. */
export function CoolingFigures({ view, found }: Props) {
  const t = useTranslations('science');
  const say = useTranslations('common') as unknown as Say;
  const site = siteOf(view);
  const inputs = useInputs(view, found);
  const [a, b] = found.readings.slice(-2);
  return (
    <>
      {found.targets.map(({ stage, expected, limit }) =>
        expected.say === 'range' ? (
          <Computed
            key={stage}
            words={t('cooling.figure_range', { figure: temperature(limit.value, limit.unit) })}
            figure={`${timeAt(expected.earliest, site)} – ${expected.latest === null ? '…' : timeAt(expected.latest, site, 'up')}`}
            inputs={expected.by === 'depth' ? inputs.depth : inputs.readings}
            formula={formulas[expected.by]}
            source={
              expected.by === 'readings'
                ? t('source.forecast', { foods: measuredCover.foods })
                : t(expected.by === 'depth' ? 'source.slab' : 'source.plain_curve')
            }
            use="W"
          />
        ) : null,
      )}
      {found.rate === null || found.air === null || a === undefined || b === undefined ? null : (
        <Computed
          words={t('cooling.figure_rate')}
          figure={
            found.rate.rate > 0
              ? t('cooling.rate_unit', { rate: rough(found.rate.rate) })
              : t('cooling.no_rate')
          }
          inputs={[
            { words: t('input.first', { time: timeAt(a.at, site) }), value: degreesF(a.value, site.unit) },
            { words: t('input.second', { time: timeAt(b.at, site) }), value: degreesF(b.value, site.unit) },
            ...inputs.air,
          ]}
          formula="r = log10((T1 − Ta)/(T2 − Ta))/dt"
          source={t('source.rate')}
          use="S"
          note={
            found.required === null ? undefined : t('cooling.rate_asked', { rate: rough(found.required) })
          }
        />
      )}
      {found.ways.map(({ way, hours }) => (
        <Computed
          key={way}
          words={t('cooling.way_hours', { way: t(`cooling.way_name.${way}`) })}
          figure={length(say, hours * 60, 'up')}
          inputs={[...inputs.last, ...inputs.air, ...inputs.pan]}
          formula="θ(t) = (T − Ta)/(T1 − Ta), slab from both faces; h = √(slow·quick): pans 12 … 25, chiller 25 … 40, ice bath 100 … 300 W/m²K; start by t: t + θ⁻¹(t) = deadline"
          source={t('source.ways')}
          use="W"
        />
      ))}
    </>
  );
}

function useInputs(view: BatchView, { air, readings, depthIn, chi2 }: CoolingOutlook) {
  const t = useTranslations('science');
  const site = siteOf(view);
  const airIn: Input[] =
    air === null
      ? []
      : [
          {
            words: t('input.air'),
            value: `${degreesF(air.value, site.unit)}, ${t('input.air_basis', { basis: air.basis })}`,
          },
        ];
  const read: Input[] = readings.map(({ at, value }) => ({
    words: t('input.reading', { time: timeAt(at, site) }),
    value: degreesF(value, site.unit),
  }));
  const pan: Input[] = depthIn === null ? [] : [{ words: t('input.depth'), value: `${depthIn} in` }];
  return {
    air: airIn,
    pan,
    last: read.slice(-1),
    depth: [...read, ...airIn, ...pan, { words: t('input.spread'), value: '± 30 %' }],
    readings: [
      ...read,
      ...airIn,
      { words: t('input.sigma'), value: `${ASSUMED.s}, ${ASSUMED.sModel}, ${ASSUMED.sAir} °F` },
      ...(chi2 === null ? [] : [{ words: t('cooling.fit'), value: `χ² = ${rough(chi2)}` }]),
    ],
  };
}
