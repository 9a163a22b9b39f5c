import { useTranslations } from 'next-intl';
import { temperature } from '#app/batch/said.ts';
import type { BatchView } from '#app/batch/view.ts';
import type { CoolingOutlook } from '#lib/between/cooling.ts';
import { degrees } from '#shared/units.ts';
import { Chart } from './Chart.tsx';
import { bandOf } from './cooling-curve.ts';
import { degreesF, shownF, siteOf, timeAt } from './said.ts';

const most = 8 * 3_600_000; // further ahead a chart says nothing
const room = 20 * 60_000;

/** Readings, the band in which the inside is expected, the figures with their sections, the deadlines. */
export function CoolingChart({ view, found }: { view: BatchView; found: CoolingOutlook }) {
  const t = useTranslations('science.cooling');
  const site = siteOf(view);
  const { readings, targets, air } = found;
  const first = readings[0];
  if (first === undefined) return null;
  const ends = targets.flatMap(({ expected, deadline }) => [
    ...(expected.say === 'range' && expected.latest !== null ? [expected.latest] : []),
    ...(deadline === null ? [] : [deadline]),
  ]);
  const to = Math.min(first.at + most, Math.max(site.now, ...ends) + room);
  const shown = (value: number): number => shownF(value, site.unit);
  const top = Math.max(...readings.map(({ value }) => value)) + 5;
  const bottom = Math.min(air?.value ?? 32, ...targets.map((target) => target.to)) - 20;
  const deadlines = targets.flatMap(({ deadline }) =>
    deadline === null || deadline > to
      ? []
      : [
          {
            x: deadline,
            words: t('post_deadline', { time: timeAt(deadline, site) }),
            voice: 'rule' as const,
          },
        ],
  );
  return (
    <Chart
      label={t('chart', { name: view.batch.name })}
      x={{
        from: Math.min(first.at, found.since),
        to,
        zone: site.zone,
        clock: site.clock,
        words: t('axis_x'),
      }}
      y={{ from: shown(bottom), to: shown(top), words: t('axis_y', { unit: degrees(site.unit) }) }}
      limits={targets.map((target) => ({
        value: shown(target.to),
        words: temperature(target.limit.value, target.limit.unit),
        section: target.section,
      }))}
      posts={[...deadlines, { x: site.now, words: t('post_now'), voice: 'tool' }]}
      bands={[
        {
          key: 'expected',
          points: bandOf(found, to).map(({ x, low, high }) => ({ x, low: shown(low), high: shown(high) })),
        },
      ]}
      series={[
        {
          key: 'read',
          drawn: 'crosses',
          points: readings.map(({ at, value }) => ({ x: at, y: shown(value) })),
        },
      ]}
      table={{
        title: t('table'),
        head: [t('col_time'), t('col_what'), t('col_figure')],
        rows: [
          ...readings.map(({ at, value }) => [timeAt(at, site), t('row_read'), degreesF(value, site.unit)]),
          ...targets.flatMap(({ expected, limit, deadline }) => {
            const figure = temperature(limit.value, limit.unit);
            return [
              ...(expected.say === 'range'
                ? [
                    [
                      `${timeAt(expected.earliest, site)} – ${expected.latest === null ? '…' : timeAt(expected.latest, site, 'up')}`,
                      t('row_expected'),
                      figure,
                    ],
                  ]
                : []),
              ...(deadline === null ? [] : [[timeAt(deadline, site), t('row_deadline'), figure]]),
            ];
          }),
        ],
      }}
    />
  );
}
