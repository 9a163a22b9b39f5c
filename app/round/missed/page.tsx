import { getTranslations } from 'next-intl/server';
import { loadBook } from '#app/server/book.ts';
import { entrance, handNow } from '#app/server/session.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Words } from '#app/ui/Words.tsx';
import { roundDue, roundPlan } from '#lib/fold/round-plan.ts';
import { wallClock } from '#shared/time.ts';
import { missedRound } from '../missed-round.ts';
import { Missed } from './Missed.tsx';
import css from './page.module.css';

export const dynamic = 'force-dynamic';

/** Says that a round was missed, and why. It stays missed; nobody fills it in. */
export default async function MissedPage() {
  const session = await entrance();
  const book = await loadBook(session);
  const t = await getTranslations('round.missed');
  const common = await getTranslations('common');
  const due = roundDue(book);
  const site = book.kitchen.site;
  const time = (ms: number): string => wallClock(ms, site?.zone ?? 'UTC', site?.clock ?? '24');
  const missedAt = missedRound(book);
  const said = book.rounds.findLast(({ body }) => body.status === 'missed' && body.planned_at !== null);
  return (
    <Sheet>
      <Headband back={{ href: '/', words: common('kitchen_now') }} clock={time(book.asOf)} />
      <main className={css.missed}>
        <h1>{t('title')}</h1>
        {missedAt !== null ? (
          <>
            <p>{t('why')}</p>
            <p className={css.planned}>{t('planned', { time: time(missedAt) })}</p>
            <Words names={['round', 'common']}>
              <Missed
                site={session.site}
                by={handNow(session)}
                plannedAt={new Date(missedAt).toISOString()}
                equipment={roundPlan(book).equipment.map(({ id }) => id)}
                zone={site?.zone ?? 'UTC'}
                clock={site?.clock ?? '24'}
              />
            </Words>
          </>
        ) : (
          <>
            {said?.body.planned_at ? (
              <p>
                {t('said', { time: time(Date.parse(said.body.planned_at)), reason: said.body.reason ?? '' })}
              </p>
            ) : null}
            <p>{due === null ? t('none_planned') : t('none', { time: time(due.latestAt) })}</p>
          </>
        )}
      </main>
    </Sheet>
  );
}
