import Link from 'next/link';
import { getLocale, getTranslations } from 'next-intl/server';
import { getDb } from '#app/server/db.ts';
import { entrance } from '#app/server/session.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Mark } from '#app/ui/Mark.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import type { MarkWord } from '#lib/sheet/mark-paths.ts';
import { localDate, msOf, wallClock } from '#shared/time.ts';
import { type DayRow, dayList } from './day-list.ts';
import css from './page.module.css';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('day');
  return { title: t('list') };
}

/** The days, newest first, each with what became of its sheet. */
export default async function DaysPage({ searchParams }: { searchParams: Promise<{ until?: string }> }) {
  const session = await entrance();
  const { until } = await searchParams;
  const asked = localDate.safeParse(until).success ? (until ?? null) : null;
  const list = await dayList(await getDb(), session.site, asked, Date.now());
  const t = await getTranslations('day');
  const common = await getTranslations('common');
  return (
    <Sheet width="tablet">
      <Headband title={t('title')} back={{ href: '/', words: common('kitchen_now') }} />
      <main className={css.days}>
        {!list || list.rows.length === 0 ? (
          <section className={css.part}>
            <h2>{t('none')}</h2>
            <p>{t('none_why')}</p>
          </section>
        ) : (
          <ul>
            {list.rows.map((row) => (
              <Row key={row.day} row={row} />
            ))}
          </ul>
        )}
        <nav className={css.keys}>
          {list?.newer ? <KeyLink href={`/day?until=${list.newer}`}>{t('newer')}</KeyLink> : null}
          {list?.older ? <KeyLink href={`/day?until=${list.older}`}>{t('older')}</KeyLink> : null}
        </nav>
        <p className={css.note}>{common('local_codes')}</p>
      </main>
    </Sheet>
  );
}

const marks: Record<DayRow['state']['state'], MarkWord> = {
  not_over: 'open',
  unsigned: 'not_shown',
  signed: 'in_the_book',
  changed: 'late',
};

async function Row({ row }: { row: DayRow }) {
  const t = await getTranslations('day');
  const erase = await getTranslations('erase.day');
  const locale = (await getLocale()) === 'es' ? 'es-US' : 'en-GB';
  const date = new Intl.DateTimeFormat(locale, {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    timeZone: 'UTC',
  });
  const last = row.state.signatures.at(-1);
  const at = last
    ? `${short(last.at, row.zone, locale)} ${wallClock(msOf(last.at), row.zone, row.clock)}`
    : '';
  return (
    <li>
      <Link href={`/day/${row.day}`} prefetch={false} className={css.day}>
        <span className={css.date}>{date.format(new Date(`${row.day}T12:00:00Z`))}</span>
        <span className={css.state}>
          {row.erased ? null : <Mark word={marks[row.state.state]} />}
          {row.erased ? erase('list') : t(`state.${row.state.state}`, { name: last?.body.name ?? '', at })}
        </span>
        <span className={css.note}>
          {row.erased
            ? null
            : row.empty
              ? t('empty_day')
              : row.state.state === 'signed' // what was open has been decided in signing
                ? t('things', { count: row.things })
                : `${t('things', { count: row.things })}, ${t('open_count', { count: row.open })}`}
        </span>
      </Link>
    </li>
  );
}

const short = (at: string, zone: string, locale: string): string =>
  new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', timeZone: zone }).format(msOf(at));
