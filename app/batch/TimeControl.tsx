import { useTranslations } from 'next-intl';
import { Key } from '#app/ui/Key.tsx';
import { Section } from '#app/ui/Section.tsx';
import { wallClock } from '#shared/time.ts';
import css from './form.module.css';
import type { QuestionProps } from './StepQuestions.tsx';
import { minutesOut, outBy } from './step-rules.ts';

const hours = (minutes: number): string => String(Number((minutes / 60).toFixed(1)));
const said = [true, false] as const;

/** Time instead of temperature asks three things that no thermometer shows: which way, a procedure, and the mark. */
export function TimeControl({ form, onChange, context, at }: QuestionProps) {
  const t = useTranslations('batch.time_control');
  const all = useTranslations('batch');
  const { rules, zone, clock } = context;
  const removed = at === undefined ? Date.now() : at;
  const by = removed === null ? null : outBy(rules, form.timeMode ?? '4h', removed);
  const ways = (['4h', '6h'] as const).flatMap((mode) => {
    const minutes = minutesOut(rules, mode);
    return minutes === null ? [] : [{ mode, minutes }];
  });
  return (
    <section className={css.part}>
      <p className={css.said}>
        {all('time_control_help')}{' '}
        {rules.timeControl === null ? null : <Section>{rules.timeControl.section}</Section>}
      </p>
      {ways.length === 0 ? <p className={css.said}>{t('no_figure')}</p> : null}
      {ways.length < 2 ? null : (
        <>
          <h2>{t('mode')}</h2>
          <div className={css.keys}>
            {ways.map(({ mode, minutes }) => (
              <Key
                key={mode}
                down={(form.timeMode ?? '4h') === mode}
                onClick={() => onChange({ timeMode: mode })}
                sub={t(`mode_${mode}`)}
              >
                {t('hours', { hours: hours(minutes) })}
              </Key>
            ))}
          </div>
        </>
      )}
      <h2>{t('procedure')}</h2>
      <div className={css.keys}>
        {said.map((procedure) => (
          <Key
            key={String(procedure)}
            down={form.procedure === procedure}
            onClick={() => onChange({ procedure })}
          >
            {t(procedure ? 'procedure_yes' : 'procedure_no')}
          </Key>
        ))}
      </div>
      <h2>{t('marked')}</h2>
      <p className={css.note}>{t('from_when')}</p>
      <div className={css.keys}>
        {said.map((marked) => (
          <Key key={String(marked)} down={form.marked === marked} onClick={() => onChange({ marked })}>
            {marked
              ? by === null
                ? t('marked_yes')
                : t('marked_by', { time: wallClock(by, zone, clock) })
              : t('marked_no')}
          </Key>
        ))}
      </div>
    </section>
  );
}
