import { getLocale, getTranslations } from 'next-intl/server';
import { CoolingMethods } from '#app/batch/CoolingMethods.tsx';
import type { KitchenView } from '#app/kitchen/view.ts';
import { loadBook } from '#app/server/book.ts';
import { entrance } from '#app/server/session.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { profileOf } from '#lib/fold/ask.ts';
import { coolingAdvice } from '#lib/judge/cooling-methods.ts';
import { wallClock } from '#shared/time.ts';
import { CoolingBatch } from './CoolingBatch.tsx';
import { coolingCards } from './cooling-cards.ts';
import css from './page.module.css';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('cooling');
  return { title: t('title') };
}

/** What is cooling now, since when, and by when it must be where: one tap to the next reading. */
export default async function CoolingPage() {
  const session = await entrance();
  const book = await loadBook(session);
  const t = await getTranslations('cooling');
  const common = await getTranslations('common');
  const site = book.kitchen.site;
  const view: Pick<KitchenView, 'book' | 'zone' | 'clock' | 'lang'> = {
    book,
    zone: site?.zone ?? 'UTC',
    clock: site?.clock ?? '24',
    lang: (await getLocale()) === 'es' ? 'es' : 'en',
  };
  const cards = coolingCards(book);
  const profile = profileOf(book);
  return (
    <Sheet>
      <Headband
        back={{ href: '/', words: common('kitchen_now') }}
        clock={wallClock(book.asOf, view.zone, view.clock)}
      />
      <main className={css.cooling}>
        <h1 className={css.title}>{t('title')}</h1>
        {cards.length === 0 ? (
          <section className={css.none}>
            <h2>{t('none')}</h2>
            <p>{t('none_why')}</p>
            <KeyLink href="/">{common('kitchen_now')}</KeyLink>
          </section>
        ) : (
          cards.map((card) => (
            <CoolingBatch key={card.group.run} card={card} view={view} unit={site?.unit ?? 'degF'} />
          ))
        )}
        {cards.length > 0 ? (
          <div className={css.advice}>
            <p>{t('advice')}</p>
            <CoolingMethods advice={profile === null ? null : coolingAdvice(profile)} />
          </div>
        ) : null}
        <p className={css.note}>{common('local_codes')}</p>
      </main>
    </Sheet>
  );
}
