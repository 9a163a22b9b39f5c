import { useTranslations } from 'next-intl';
import { countedAs } from '#app/batch/counted.ts';
import { length, type Say, timeSaid } from '#app/batch/said.ts';
import { placeName } from '#app/batch/view.ts';
import { By } from '#app/ui/By.tsx';
import { Figure } from '#app/ui/Figure.tsx';
import { Section } from '#app/ui/Section.tsx';
import type { Deviation } from '#lib/fold/book.ts';
import { wallClock } from '#shared/time.ts';
import css from './deviation.module.css';
import { stillMissing } from './still-missing.ts';
import { aboutWhat, type DeviationView } from './view.ts';

/** What kind of deviation it is: a message key under `deviation.what`. */
export function kindOf(deviation: Deviation) {
  if (deviation.probe !== null) return 'probe';
  if (deviation.batch === null) return 'equipment';
  const stages = [
    'at_readings',
    'stage_1',
    'total',
    'ambient_total',
    'temperature',
    'time',
    'oven',
    'date_mark',
  ] as const;
  return stages.find((stage) => stage === deviation.stage) ?? kindOfStep(deviation.step);
}

/** A deviation opened by hand names no stage: its step says what it is about. */
function kindOfStep(step: Deviation['step']) {
  switch (step) {
    case 'rest':
    case 'hot_hold':
    case 'service':
    case 'transport':
    case 'cold_hold':
      return 'at_readings';
    case 'cooling':
      return 'ambient_total';
    case 'cook':
    case 'reheat':
      return 'temperature';
    default:
      return 'by_hand';
  }
}

export const sideOf = (deviation: Deviation): 'over' | 'under' =>
  deviation.step === 'cold_hold' || deviation.step === 'cooling' ? 'over' : 'under';

/** Where, what, the figure that showed it, found when and by whom, decide by when. */
export function Head({ view }: { view: DeviationView }) {
  const t = useTranslations('deviation');
  const say = useTranslations('common') as unknown as Say;
  const { deviation, book } = view;
  const within = book.kitchen.site?.house.decide_within_min ?? null;
  const finder = deviation.found?.by ?? deviation.entry?.by ?? null;
  const name = finder === null ? undefined : book.kitchen.people.get(finder)?.name;
  const time = timeSaid(deviation.foundAt, view);
  const place = placeName(book, deviation.equipment);
  const what = t(`what.${kindOf(deviation)}`, { side: sideOf(deviation) });
  const pieces = (deviation.pieces ?? [])
    .map((number) => t('piece', { number, counted: countedAs(view.batch) }))
    .join(', ');
  return (
    <header className={css.head}>
      <div>
        <h1>{place === null ? what : `${place}: ${what}`}</h1>
        <p>{[aboutWhat(view), pieces].filter((word) => word !== '').join(', ')}</p>
        <p className={css.note}>
          {name === undefined ? t('found', { time }) : t('found_by', { time, name })}.{' '}
          {deviation.section === null ? null : <Section>{deviation.section}</Section>}
        </p>
      </div>
      <div className={css.figure}>
        {deviation.found === null ? null : (
          <Figure
            typed={deviation.found.typed}
            unit={deviation.found.unit}
            dress={deviation.found.suspect ? 'wavy' : 'cut'}
          />
        )}
        {deviation.state === 'open' && within !== null ? (
          <>
            <By time={wallClock(deviation.foundAt + within * 60_000, view.zone, view.clock)} size="next" />
            <span className={css.note}>{t('house_time', { length: length(say, within) })}</span>
          </>
        ) : (
          <span className={css.note}>
            {t(`state.${deviation.state}`)}
            {stillMissing(deviation).includes('cause') ? `; ${t('cause_missing')}` : ''}
          </span>
        )}
      </div>
    </header>
  );
}
