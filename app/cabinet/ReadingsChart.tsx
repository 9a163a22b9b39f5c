import { useTranslations } from 'next-intl';
import { Chart } from '#app/science/Chart.tsx';
import type { CabinetChart } from '#lib/between/cabinet-chart.ts';
import type { CabinetReading, CabinetRecord } from '#lib/between/cabinet-record.ts';
import { degrees } from '#shared/units.ts';
import { type CabinetView, figureOf, momentOf, shownIn } from './view.ts';

type Props = { record: CabinetRecord; chart: CabinetChart; view: CabinetView };

const DAY = 86_400_000;
/** Up to two days the kitchen's clock is the axis; beyond, days. */
const CLOCK_UP_TO = 2 * DAY;

/** Readings, the limit of the rule with its section, and the limits of the cabinet's own. */
export function ReadingsChart({
  record: { readings, limit, what },
  chart: { control, rules, smoothed },
  view,
}: Props) {
  const t = useTranslations('cabinet.chart');
  const saw = useTranslations('cabinet.rules');
  const values = readings.map(({ value }) => value);
  const levels = smoothed?.levels ?? [];
  const levelAt = new Map(levels.map(({ reading, level }) => [reading, level]));
  const all = [
    ...values,
    ...levels.map(({ level }) => level),
    ...(control ? [control.low, control.high] : []),
    ...(limit ? [limit.degF] : []),
  ];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  // Under the lowest limit its section is printed.
  const room = Math.max(2, high - low);
  const first = readings[0]?.at ?? view.now;
  const byClock = view.now - first <= CLOCK_UP_TO;
  const x = (at: number): number => (byClock ? at : (at - view.now) / DAY);
  const spoke = (reading: CabinetReading): string =>
    rules
      .filter(({ at }) => at.includes(reading))
      .map(({ rule }) => saw(rule))
      .join('. ');
  return (
    <Chart
      label={t('label', {
        name: view.name,
        count: readings.length,
        low: figureOf(view, Math.min(...values)),
        high: figureOf(view, Math.max(...values)),
        limit: limit === null ? '–' : figureOf(view, limit.degF),
      })}
      x={
        byClock
          ? { from: first, to: view.now, zone: view.zone, clock: view.clock, words: t('x_clock') }
          : { from: Math.floor(x(first)), to: 0, words: t('x') }
      }
      y={{
        from: shownIn(view, low - 0.15 * room),
        to: shownIn(view, high + 0.08 * room),
        words: t('y', { what, unit: degrees(view.unit) }),
      }}
      limits={
        limit === null
          ? []
          : [
              {
                value: shownIn(view, limit.degF),
                words: figureOf(view, limit.degF),
                section: limit.figure.section,
              },
            ]
      }
      levels={
        control === null
          ? []
          : [
              {
                value: shownIn(view, control.mean),
                words: t('mean', { figure: figureOf(view, control.mean) }),
              },
              { value: shownIn(view, control.low), words: figureOf(view, control.low) },
              { value: shownIn(view, control.high), words: figureOf(view, control.high) },
            ]
      }
      series={[
        {
          key: 'read',
          drawn: 'crosses',
          points: readings.map(({ at, value }) => ({ x: x(at), y: shownIn(view, value) })),
        },
        {
          key: 'smoothed',
          drawn: 'dashed',
          points: levels.map(({ reading, level }) => ({ x: x(reading.at), y: shownIn(view, level) })),
        },
      ]}
      table={{
        title: t('table'),
        head: [t('col_when'), t('col_read'), t('col_smoothed'), t('col_saw')],
        rows: readings.toReversed().map((reading) => {
          const level = levelAt.get(reading);
          return [
            momentOf(view, reading.at),
            figureOf(view, reading.value),
            level === undefined ? '–' : figureOf(view, level),
            spoke(reading),
          ];
        }),
      }}
    />
  );
}
