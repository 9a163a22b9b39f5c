import { getLocale, getTranslations } from 'next-intl/server';
import { loadBook } from '#app/server/book.ts';
import { entrance } from '#app/server/session.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Words } from '#app/ui/Words.tsx';
import { whenOf } from '#app/ui/when.ts';
import { degrees } from '#shared/units.ts';
import { HandOver } from './HandOver.tsx';
import { ItemList } from './ItemList.tsx';
import css from './page.module.css';
import { type Say, shiftLists } from './shift-items.ts';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('shift');
  return { title: t('title') };
}

/** The shift changes hands: what is open, what cools, what is due, what was said; then two people press their own key. */
export default async function ShiftPage() {
  const session = await entrance();
  const book = await loadBook(session);
  const t = await getTranslations('shift');
  const item = await getTranslations('shift.item');
  const common = await getTranslations('common');
  const site = book.kitchen.site;
  const zone = site?.zone ?? 'UTC';
  const clock = site?.clock ?? '24';
  const weekday = await getTranslations('common.weekday');
  // The margin is as wide as a time: three letters of the day before stand over it.
  const time = whenOf({ zone, clock }, book.asOf, (day) => weekday(day).slice(0, 3));
  const lists = shiftLists(book, {
    say: item as unknown as Say,
    time,
    figure: (value, unit) => `${value} ${degrees(unit)}`,
  });
  const openItems = [...lists.open, ...lists.cooling, ...lists.due].map(
    ({ words, note }) => `${words}${note ? `: ${note}` : ''}`,
  );
  const people = [...book.kitchen.people.values()].filter((p) => p.active && p.role !== 'reader');
  const last = book.handovers.at(-1);
  const nameOf = (person: string | null): string =>
    person === null ? '–' : (book.kitchen.people.get(person)?.name ?? '?');
  return (
    <Sheet>
      <Headband back={{ href: '/', words: common('kitchen_now') }} clock={time(book.asOf)} />
      <main className={css.shift}>
        <h1 className={css.title}>{t('title')}</h1>
        {last ? (
          <p className={css.note}>
            {t('last')}:{' '}
            {t('last_said', {
              time: time(Date.parse(last.at)),
              from: nameOf(last.body.from),
              to: nameOf(last.body.to),
            })}
          </p>
        ) : null}
        <ItemList
          title={t('still_open', { count: lists.open.length })}
          items={lists.open}
          none={t('nothing_open')}
          time={time}
        />
        <ItemList
          title={t('cooling', { count: lists.cooling.length })}
          items={lists.cooling}
          none={t('nothing_cooling')}
          time={time}
        />
        <ItemList title={t('due_next')} items={lists.due} none={t('nothing_due')} time={time} />
        <Words names={['shift', 'round', 'common']}>
          <HandOver
            key={last?.id ?? 'first'}
            site={session.site}
            from={session.hand}
            people={people.map((p) => ({
              id: p.person,
              initials: p.initials,
              name: p.name,
              note: p.title ?? common(`role.${p.role}`),
            }))}
            openItems={openItems.map((words) => words.slice(0, 300)).slice(0, 100)}
            lang={(await getLocale()) === 'es' ? 'es' : 'en'}
            zone={zone}
            clock={clock}
          />
        </Words>
      </main>
    </Sheet>
  );
}
