import { notFound, redirect } from 'next/navigation';
import { getLocale, getTranslations } from 'next-intl/server';
import { getDb } from '#app/server/db.ts';
import { kitchenOf } from '#app/server/kitchen-of.ts';
import { entrance } from '#app/server/session.ts';
import { offeredLimits } from '#app/set-up/limits/offered.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Words } from '#app/ui/Words.tsx';
import { erasedDay } from '#db/erase/erased-day.ts';
import { loadDay } from '#db/load-day.ts';
import { canonicalDay } from '#lib/sheet/canonical-day.ts';
import type { CanonicalDay } from '#lib/sheet/day-schema.ts';
import { profileWords } from '#lib/sheet/profile-words.ts';
import { SheetNames } from '#lib/sheet/sheet-names.ts';
import { sheetWords } from '#lib/sheet/sheet-words.ts';
import { nothingWritten } from '#lib/sheet/totals.ts';
import { judgedOtherwise } from '#lib/sheet/what-if.ts';
import { localDate, wallClock } from '#shared/time.ts';
import { Differs } from './Differs.tsx';
import css from './page.module.css';
import { TryLimits } from './TryLimits.tsx';

export const dynamic = 'force-dynamic';

type Params = { params: Promise<{ day: string }>; searchParams: Promise<{ limits?: string | string[] }> };

/** A trial: the same entries of one day under other limits. It is computed, shown and forgotten. */
export default async function WhatIfPage({ params, searchParams }: Params) {
  const session = await entrance();
  const { day } = await params;
  if (!localDate.safeParse(day).success) notFound();
  const db = await getDb();
  const now = Date.now();
  if (await erasedDay(db, session.site, day)) redirect(`/day/${day}`);
  const entries = await loadDay(db, session.site, day);
  const is = canonicalDay(entries, day, { knownUntil: now });
  if (!is) notFound();
  const asked = (await searchParams).limits;
  const limits = typeof asked === 'string' && asked !== '' ? asked : null;
  const would = limits === null ? null : canonicalDay(entries, day, { knownUntil: now, limits });
  const language = (await getLocale()) === 'es' ? 'es' : 'en';
  const namesOf = (one: CanonicalDay) => new SheetNames(one, sheetWords(language), language);
  const names = namesOf(is);
  const t = await getTranslations('limits.what_if');
  const offered = offeredLimits(await kitchenOf(db, session.site)).filter(({ id }) => id !== is.profile.id);
  const { zone, clock } = is.site;
  return (
    <Sheet width="tablet">
      <Headband back={{ href: `/day/${day}`, words: t('back') }} clock={wallClock(now, zone, clock)} />
      <main className={css.page}>
        <header className={css.head}>
          <h1>{t('title')}</h1>
          <p>{names.longDate(is.from)}</p>
          <p className={css.trial}>{t('intro', { name: is.profile.name })}</p>
          {is.over ? null : <p className={css.note}>{t('not_over')}</p>}
        </header>
        {limits === null || would === null ? null : (
          <Answer is={is} would={would} names={names} judged={profileWords(namesOf(would))} />
        )}
        <Words names={['limits', 'common']}>
          <TryLimits offered={offered} chosen={limits ?? ''} />
        </Words>
        <p className={css.note}>{t('worse')}</p>
      </main>
    </Sheet>
  );
}

type AnswerProps = { is: CanonicalDay; would: CanonicalDay; names: SheetNames; judged: string };

async function Answer({ is, would, names, judged }: AnswerProps) {
  const t = await getTranslations('limits.what_if');
  if (would.profile.edition === null) return <p className={css.strip}>{t('unknown')}</p>;
  if (would.profile.id === is.profile.id) return <p className={css.strip}>{t('same')}</p>;
  if (nothingWritten(is)) return <p className={css.strip}>{names.say('sheet.nothing_written')}</p>;
  const { name } = would.profile;
  const differs = judgedOtherwise(is, would);
  return (
    <section className={css.answer}>
      <h2>{differs.length === 0 ? t('nothing', { name }) : t('count', { count: differs.length, name })}</h2>
      <p className={css.note}>{judged}</p>
      <Differs differs={differs} names={names} />
    </section>
  );
}
