import { getTranslations } from 'next-intl/server';
import type { SheetNames } from '#lib/sheet/sheet-names.ts';
import css from './page.module.css';

/** Rounds, shift changes and thermometers of the day, in a line each. */
export async function Behind({ names }: { names: SheetNames }) {
  const t = await getTranslations('day');
  const { day } = names;
  const done = day.rounds.filter((round) => round.status !== 'missed').length;
  return (
    <section className={css.behind}>
      <div>
        <h3>{t('rounds')}</h3>
        <p>{t('rounds_said', { done, missed: day.rounds.length - done })}</p>
      </div>
      <div>
        <h3>{t('shifts')}</h3>
        {day.handovers.length === 0 ? <p>{t('no_shifts')}</p> : null}
        {day.handovers.map((one) => (
          <p key={one.id}>
            {names.say('sheet.handed_over', {
              from: names.hand(one.from),
              to: names.hand(one.to),
              time: names.time(one.at),
            })}
          </p>
        ))}
      </div>
      <div>
        <h3>{t('thermometers')}</h3>
        {day.thermometers.map((one) => (
          <p key={one.id}>
            {names.thermometer(one.id)}:{' '}
            {names.say('sheet.thermometer_readings', { count: one.readings, suspect: one.suspect.length })}
          </p>
        ))}
      </div>
    </section>
  );
}
