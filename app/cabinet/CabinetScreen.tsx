import { useTranslations } from 'next-intl';
import { Foot } from '#app/ui/Foot.tsx';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { cabinetChart } from '#lib/between/cabinet-chart.ts';
import { lookingOften } from '#lib/between/cabinet-looks.ts';
import { cabinetRecord } from '#lib/between/cabinet-record.ts';
import type { Book } from '#lib/fold/book.ts';
import type { Body } from '#shared/entries/entry.ts';
import { wallClock } from '#shared/time.ts';
import { type CabinetAsked, daysOf, toldOf, windows } from './asked.ts';
import css from './cabinet.module.css';
import { HowOften } from './HowOften.tsx';
import { ReadingsChart } from './ReadingsChart.tsx';
import { DriftSaid, RulesSaid, UsualSaid } from './Said.tsx';
import { SlowSaid } from './SlowSaid.tsx';
import { type CabinetView, dayOf } from './view.ts';

type Props = { book: Book; place: Body<'equipment'>; asked: CabinetAsked; locale: 'en' | 'es' };

/** One cabinet: its readings with limits of its own, what the run rules saw, its drift, how often to look at it. */
export function CabinetScreen({ book, place, asked, locale }: Props) {
  const t = useTranslations('cabinet');
  const common = useTranslations('common');
  const site = book.kitchen.site;
  const view: CabinetView = {
    name: place.name,
    unit: site?.unit ?? 'degF',
    zone: site?.zone ?? 'UTC',
    clock: site?.clock ?? '24',
    locale,
    now: book.asOf,
  };
  const days = daysOf(asked);
  const since = book.asOf - days * 86_400_000;
  const record = cabinetRecord(book, place.equipment, since);
  return (
    <Sheet width="batch">
      <Headband
        back={{ href: '/', words: common('kitchen_now') }}
        clock={wallClock(book.asOf, view.zone, view.clock)}
      />
      <main className={css.page}>
        <h1>{place.name}</h1>
        {record === null ? (
          <p>{t('no_side')}</p>
        ) : (
          <>
            <p>
              {t('since', { count: record.readings.length, day: dayOf(view, since) })}{' '}
              {record.readings.length === 0
                ? null
                : `${t('what', { what: record.what, side: record.side })}.`}{' '}
              {record.everyMin === null ? null : t('thinned', { minutes: record.everyMin })}
            </p>
            <nav className={css.windows} aria-label={t('window')}>
              {windows.map((each) =>
                each === days ? (
                  <span key={each} aria-current="true" className={css.chosen}>
                    {t('days', { days: each })}
                  </span>
                ) : (
                  <KeyLink key={each} kind="plain" href={`/cabinet/${place.equipment}?days=${each}`}>
                    {t('days', { days: each })}
                  </KeyLink>
                ),
              )}
            </nav>
            {record.readings.length === 0 ? (
              <Empty />
            ) : (
              <Charted book={book} place={place} record={record} view={view} asked={asked} />
            )}
          </>
        )}
        <p className={css.note}>{t('warns')}</p>
        <p className={css.note}>{common('local_codes')}</p>
      </main>
      <Foot>
        <KeyLink kind="plain" href={`/set-up/equipment/${place.equipment}`}>
          {t('to_set_up')}
        </KeyLink>
        <KeyLink kind="plain" href="/set-up/plan">
          {t('to_plan')}
        </KeyLink>
      </Foot>
    </Sheet>
  );
}

function Empty() {
  const t = useTranslations('cabinet');
  return (
    <>
      <p>{t('none')}</p>
      <KeyLink kind="save" href="/round">
        {t('round')}
      </KeyLink>
    </>
  );
}

type ChartedProps = Omit<Props, 'locale'> & {
  record: NonNullable<ReturnType<typeof cabinetRecord>>;
  view: CabinetView;
};

function Charted({ book, place, record, view, asked }: ChartedProps) {
  const t = useTranslations('cabinet');
  const chart = cabinetChart(record);
  const told = toldOf(asked, view.unit);
  const often = lookingOften(book, place.equipment, record, chart, told === 'wrong' ? null : told);
  return (
    <>
      <ReadingsChart record={record} chart={chart} view={view} />
      {chart.smoothed === null ? null : <p className={css.note}>{t('chart.drawn')}</p>}
      <UsualSaid record={record} chart={chart} view={view} />
      <RulesSaid chart={chart} view={view} />
      <SlowSaid record={record} chart={chart} view={view} />
      <DriftSaid record={record} chart={chart} view={view} />
      <HowOften
        often={often}
        record={record}
        view={view}
        typed={asked}
        wrong={told === 'wrong'}
        action={`/cabinet/${place.equipment}`}
      />
    </>
  );
}
