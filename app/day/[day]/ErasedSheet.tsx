import { getLocale, getTranslations } from 'next-intl/server';
import { Headband } from '#app/ui/Headband.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import type { ErasedDay } from '#db/erase/erased-day.ts';
import { msOf, wallClock } from '#shared/time.ts';
import css from './page.module.css';

/** A day whose text is gone: that it was, when, by whom, and the digests by which a kept copy can be told. */
export async function ErasedSheet({ erased, now }: { erased: ErasedDay; now: number }) {
  const t = await getTranslations('erase.day');
  const day = await getTranslations('day');
  const common = await getTranslations('common');
  const locale = (await getLocale()) === 'es' ? 'es-US' : 'en-GB';
  const { at, zone, clock, digest, sheets, count, left, seq, by } = erased;
  const date = (ms: number, timeZone: string) =>
    new Intl.DateTimeFormat(locale, { dateStyle: 'full', timeZone }).format(ms);
  const on = `${date(msOf(at), zone)}, ${wallClock(msOf(at), zone, clock)}`;
  return (
    <Sheet width="desk">
      <Headband back={{ href: '/day', words: day('all') }} clock={wallClock(now, zone, clock)} />
      <main className={css.page}>
        <div className={css.main}>
          <header className={css.head}>
            <h1>{day('heading', { date: date(Date.parse(`${erased.day}T12:00:00Z`), 'UTC') })}</h1>
            <p className={css.answer}>{t('heading')}</p>
            <p className={css.strip}>{t('words', { count, on, by, seq })}</p>
          </header>
          <section className={css.erased}>
            <p>{t('digest', { digest })}</p>
            {sheets.map((hash) => (
              <p key={hash}>{t('sheet', { hash })}</p>
            ))}
            <p>{t('left', { count: left })}</p>
            <p className={css.note}>{t('chain')}</p>
            <p className={css.note}>{common('local_codes')}</p>
          </section>
        </div>
      </main>
    </Sheet>
  );
}
