import { useTranslations } from 'next-intl';
import { momentOf } from '#app/cabinet/view.ts';
import { Chart } from '#app/science/Chart.tsx';
import { Verdict } from '#app/ui/Verdict.tsx';
import { type Allowed, checkPoints } from '#lib/between/probe-record.ts';
import type { Check } from '#lib/fold/book.ts';
import type { Body } from '#shared/entries/entry.ts';
import { degrees } from '#shared/units.ts';
import css from './page.module.css';
import type { ProbeView } from './view.ts';

type Props = { probe: Body<'probe'>; checks: readonly Check[]; allowed: Allowed | null; view: ProbeView };

const DAY = 86_400_000;
const signed = (value: number): string => `${value > 0 ? '+' : value < 0 ? '−' : ''}${Math.abs(value)}`;

/** How far off it read at each check, between what its scale allows, and the same as a table. */
export function History({ probe, checks, allowed, view }: Props) {
  const t = useTranslations('kitchen.probe');
  const unit = degrees(probe.unit);
  const points = checkPoints(checks, probe.unit).map((point) => ({
    ...point,
    off: Number(point.off.toFixed(2)),
  }));
  const offs = points.map(({ off }) => off);
  const reach = Math.max(1, allowed?.value ?? 0, ...offs.map(Math.abs)) * 1.3;
  const days = (at: number): number => (at - view.now) / DAY;
  return (
    <section className={css.part}>
      <h3>{t('history')}</h3>
      {points.length === 0 ? (
        <p>{t('history_none')}</p>
      ) : (
        <Chart
          label={t('history_label', {
            name: probe.name,
            count: points.length,
            low: `${signed(Math.min(...offs))} ${unit}`,
            high: `${signed(Math.max(...offs))} ${unit}`,
            allowed: allowed === null ? '–' : `${allowed.value} ${unit}`,
          })}
          x={{
            from: Math.min(-1, Math.floor(days(points[0]?.at ?? view.now))),
            to: 0,
            words: t('history_x'),
          }}
          y={{ from: -reach, to: reach, words: t('history_y', { unit }) }}
          limits={
            allowed === null
              ? []
              : [allowed.value, -allowed.value].map((value) => ({
                  value,
                  words: `${signed(value)} ${unit}`,
                  section: allowed.ofMaker ? '' : (allowed.figure?.section ?? ''),
                }))
          }
          series={[
            {
              key: 'checks',
              drawn: 'crosses',
              points: points.map(({ at, off }) => ({ x: days(at), y: off })),
            },
          ]}
          table={{
            title: t('history_table'),
            head: (['when', 'bath', 'should', 'read', 'off', 'verdict'] as const).map((name) =>
              t(`col_${name}`),
            ),
            rows: points.toReversed().map(({ check, at, off }) => {
              const { bath, expected, typed, unit: own } = check.entry.body;
              return [
                momentOf(view, at),
                t(`bath.${bath}`),
                `${expected} ${degrees(own)}`,
                `${typed} ${degrees(own)}`,
                `${signed(off)} ${unit}`,
                <Verdict key="verdict" verdict={check.verdict} />,
              ];
            }),
          }}
        />
      )}
    </section>
  );
}
