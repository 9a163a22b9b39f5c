import { getTranslations } from 'next-intl/server';
import { loadBook } from '#app/server/book.ts';
import { entrance } from '#app/server/session.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { whenOf } from '#app/ui/when.ts';
import { wallClock } from '#shared/time.ts';
import { ProbeSays } from './ProbeSays.tsx';
import { ProbeTitle } from './ProbeTitle.tsx';
import css from './page.module.css';
import { standings } from './standing.ts';

export const dynamic = 'force-dynamic';

/** Every thermometer with its last check, worst first: a failed one, one never checked, then by when it is due. */
export default async function ProbesPage() {
  const session = await entrance();
  const book = await loadBook(session);
  const t = await getTranslations('kitchen.probe');
  const common = await getTranslations('common');
  const site = book.kitchen.site;
  const wall = { zone: site?.zone ?? 'UTC', clock: site?.clock ?? ('24' as const) };
  const time = whenOf(wall, book.asOf, await getTranslations('common.weekday'));
  const rank = ({ last, dueAt }: (typeof all)[number]): number =>
    last?.verdict === 'broken' ? 0 : last === null ? 1 : (dueAt ?? Number.MAX_SAFE_INTEGER);
  const all = standings(book);
  return (
    <Sheet>
      <Headband
        back={{ href: '/', words: common('kitchen_now') }}
        clock={wallClock(book.asOf, wall.zone, wall.clock)}
      />
      <main className={css.list}>
        <h1>{t('title')}</h1>
        {all.length === 0 ? (
          <>
            <p>{t('none')}</p>
            <KeyLink href="/set-up">{t('set_up')}</KeyLink>
          </>
        ) : (
          <ul className={css.rows}>
            {all
              .toSorted((a, b) => rank(a) - rank(b))
              .map((standing) => (
                <li key={standing.probe.probe} className={css.row}>
                  <ProbeTitle probe={standing.probe} />
                  <ProbeSays standing={standing} now={book.asOf} time={time} />
                  <KeyLink href={`/probe/${standing.probe.probe}`}>{t('check')}</KeyLink>
                </li>
              ))}
          </ul>
        )}
        <p className={css.note}>{t('why')}</p>
      </main>
    </Sheet>
  );
}
