import { useLocale, useTranslations } from 'next-intl';
import { TextField } from '#app/ui/Field.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Section } from '#app/ui/Section.tsx';
import { LocalDays } from '#lib/fold/local-days.ts';
import { lastDayOf } from './date-mark-days.ts';
import css from './form.module.css';
import type { QuestionProps } from './StepQuestions.tsx';
import { dayWords } from './said.ts';

const dayMs = 86_400_000;

/** Food that goes into the cold: is it ready to eat, and which day stands on it as its first. */
export function DateMark({ form, onChange, context, at }: QuestionProps) {
  const t = useTranslations('batch.date_mark');
  const locale = useLocale();
  const rule = context.rules.dateMark;
  const days = new LocalDays(context.zone);
  const now = at ?? Date.now();
  const offered = [
    { words: 'today', day: days.of(now) },
    { words: 'yesterday', day: days.of(now - dayMs) },
  ] as const;
  const last = rule === null || form.dayOne === '' ? null : lastDayOf(form.dayOne, rule.days);
  return (
    <section className={css.part}>
      <h2>{t('ready')}</h2>
      <div className={css.keys}>
        {([true, false] as const).map((ready) => (
          <Key key={String(ready)} down={form.ready === ready} onClick={() => onChange({ ready })}>
            {t(ready ? 'ready_yes' : 'ready_raw')}
          </Key>
        ))}
      </div>
      {form.ready === false || rule === null ? null : (
        <>
          <h2>
            {t('day_one')} <Section>{rule.section}</Section>
          </h2>
          <p className={css.note}>{t('help')}</p>
          <div className={css.keys}>
            {offered.map(({ words, day }) => (
              <Key
                key={words}
                down={form.dayOne === day}
                onClick={() => onChange({ dayOne: form.dayOne === day ? '' : day })}
              >
                {t(words, { day: dayWords(day, locale) })}
              </Key>
            ))}
          </div>
          <TextField
            id="day-one"
            type="date"
            label={t('another')}
            value={form.dayOne}
            max={days.of(now)}
            onChange={(event) => onChange({ dayOne: event.target.value })}
          />
          {last === null ? null : (
            <p aria-live="polite">
              <b>{t('last', { day: dayWords(last, locale) })}</b> {t('last_help', { days: rule.days })}
            </p>
          )}
        </>
      )}
    </section>
  );
}
