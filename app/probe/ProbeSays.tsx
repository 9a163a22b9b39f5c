import { useTranslations } from 'next-intl';
import { Section } from '#app/ui/Section.tsx';
import { Verdict } from '#app/ui/Verdict.tsx';
import { degrees } from '#shared/units.ts';
import css from './page.module.css';
import type { ProbeStanding } from './standing.ts';

type Props = { standing: ProbeStanding; now: number; time: (ms: number) => string };

/** What the last check says: its verdict, how far it was off, out of service, what it made suspect, when it is due. */
export function ProbeSays({ standing, now, time }: Props) {
  const t = useTranslations('kitchen.probe');
  const { last, dueAt } = standing;
  if (last === null) return <p className={`${css.says} ${css.out}`}>{t('never')}</p>;
  const { typed, unit, expected, bath } = last.entry.body;
  const out = last.verdict === 'broken';
  return (
    <div className={css.says}>
      <p>
        <Verdict verdict={last.verdict} /> <Section>{last.section}</Section>
      </p>
      <p>
        {t('read', {
          time: time(last.at),
          typed: `${typed} ${degrees(unit)}`,
          expected: `${expected} ${degrees(unit)}`,
          bath: t(`bath.${bath}`),
        })}
      </p>
      {out ? (
        <p className={css.out}>
          {t('out')} {last.reads === null ? null : t(`reads.${last.reads}`)}
        </p>
      ) : null}
      {out && last.suspect.length > 0 ? <p>{t('suspect', { count: last.suspect.length })}</p> : null}
      {dueAt === null || out ? null : (
        <p className={css.tool}>{t(dueAt < now ? 'was_due' : 'due', { time: time(dueAt) })}</p>
      )}
    </div>
  );
}
