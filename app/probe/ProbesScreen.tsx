import { useTranslations } from 'next-intl';
import type { ScreenGiven } from '#app/client/screen.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { whenOf } from '#app/ui/when.ts';
import { wallClock } from '#shared/time.ts';
import { ProbeSays } from './ProbeSays.tsx';
import { ProbeTitle } from './ProbeTitle.tsx';
import css from './page.module.css';
import { standings } from './standing.ts';

/** Every thermometer with its last check, worst first: a failed one, one never checked, then by when it is due. */
export function ProbesScreen({ given: { book } }: { given: ScreenGiven }) {
  const t = useTranslations('kitchen.probe');
  const common = useTranslations('common');
  const site = book.kitchen.site;
  const wall = { zone: site?.zone ?? 'UTC', clock: site?.clock ?? ('24' as const) };
  const time = whenOf(wall, book.asOf, useTranslations('common.weekday'));
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
