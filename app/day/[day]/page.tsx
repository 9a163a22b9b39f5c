import { notFound } from 'next/navigation';
import { getLocale, getTranslations } from 'next-intl/server';
import { getDb } from '#app/server/db.ts';
import { kitchenOf } from '#app/server/kitchen-of.ts';
import { entrance, type Session } from '#app/server/session.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Words } from '#app/ui/Words.tsx';
import type { Db } from '#db/connect.ts';
import { type DaySheet, daySheet, type SheetText, signedSheet } from '#db/day-sheet.ts';
import { erasedDay } from '#db/erase/erased-day.ts';
import { exceptionWords } from '#lib/sheet/exception-words.ts';
import { exceptionsOf } from '#lib/sheet/exceptions.ts';
import { tookReadings } from '#lib/sheet/printed.ts';
import { profileWords } from '#lib/sheet/profile-words.ts';
import { SheetNames } from '#lib/sheet/sheet-names.ts';
import { sheetWords } from '#lib/sheet/sheet-words.ts';
import { nothingWritten } from '#lib/sheet/totals.ts';
import { localDate, wallClock } from '#shared/time.ts';
import { Batches } from './Batches.tsx';
import { Behind } from './Behind.tsx';
import { Changes } from './Changes.tsx';
import { DayInLines } from './DayInLines.tsx';
import { Downloads } from './Downloads.tsx';
import { ErasedSheet } from './ErasedSheet.tsx';
import { ExceptionList } from './ExceptionList.tsx';
import css from './page.module.css';
import { SignBox, type Signer } from './SignBox.tsx';
import { Totals } from './Totals.tsx';

export const dynamic = 'force-dynamic';

type Params = { params: Promise<{ day: string }>; searchParams: Promise<{ revision?: string }> };

export async function generateMetadata({ params }: Params) {
  const t = await getTranslations('day');
  return { title: `${t('list')}, ${(await params).day}` };
}

/** One day's sheet, exceptions first; what is open is decided here, and the day is signed here. */
export default async function DayPage({ params, searchParams }: Params) {
  const session = await entrance();
  const { day } = await params;
  if (!localDate.safeParse(day).success) notFound();
  const db = await getDb();
  const now = Date.now();
  const erased = await erasedDay(db, session.site, day);
  if (erased) return <ErasedSheet erased={erased} now={now} />;
  const sheet = await daySheet(db, session.site, day, now);
  if (!sheet) notFound();
  const { revision } = await searchParams;
  const asked = revision && /^[1-9]\d{0,5}$/.test(revision) ? Number(revision) : null;
  const text = asked === null ? sheet.now : await signedSheet(db, session.site, sheet.state, asked);
  if (!text) notFound();
  const language = (await getLocale()) === 'es' ? 'es' : 'en';
  const names = new SheetNames(text.day, sheetWords(language), language);
  const t = await getTranslations('day');
  const { zone, clock } = text.day.site;
  return (
    <Sheet width="desk">
      <Headband back={{ href: '/day', words: t('all') }} clock={wallClock(now, zone, clock)} />
      <main className={css.page}>
        <div className={css.main}>
          <DayText names={names} text={text} sheet={sheet} past={asked !== null} />
          {asked === null ? <Changes db={db} site={session.site} sheet={sheet} /> : null}
          <ExceptionList names={names} signature={text.signature} confirming={text.confirming} />
        </div>
        <aside className={css.aside}>
          <Totals names={names} />
          {asked === null ? <Sign db={db} session={session} sheet={sheet} names={names} /> : null}
          <Downloads day={day} revision={asked} state={sheet.state} names={names} />
        </aside>
        <div className={css.main}>
          <DayInLines names={names} />
          <Behind names={names} />
          <Batches names={names} />
        </div>
      </main>
    </Sheet>
  );
}

async function DayText(props: { names: SheetNames; text: SheetText; sheet: DaySheet; past: boolean }) {
  const { names, text, sheet, past } = props;
  const t = await getTranslations('day');
  const common = await getTranslations('common');
  const limits = await getTranslations('limits.what_if');
  const count = exceptionsOf(text.day).length;
  const last = sheet.state.signatures.at(-1);
  return (
    <header className={css.head}>
      <h1>{t('heading', { date: names.longDate(text.day.from) })}</h1>
      <p>{t('bounds', { from: names.moment(text.day.from), to: names.moment(text.day.to) })}</p>
      <p className={css.answer}>
        {nothingWritten(text.day) && count === 0
          ? names.say('sheet.nothing_written')
          : t('answer', { count })}
      </p>
      {past ? (
        <p className={css.strip}>
          {t('shown_revision', { revision: text.revision })}{' '}
          <KeyLink href={`/day/${text.day.day}`}>{t('show_now')}</KeyLink>
        </p>
      ) : (
        <p className={css.strip}>
          {t(`state.${sheet.state.state}`, {
            name: last?.body.name ?? '',
            at: last ? names.moment(last.at) : '',
          })}
          {sheet.state.state === 'not_over' ? `. ${t('not_over', { to: names.moment(text.day.to) })}` : ''}
        </p>
      )}
      <p className={css.note}>
        {profileWords(names)} {common('local_codes')}
      </p>
      {past ? null : (
        <KeyLink kind="plain" href={`/day/${text.day.day}/what-if`}>
          {limits('link')}
        </KeyLink>
      )}
    </header>
  );
}

async function Sign(props: { db: Db; session: Session; sheet: DaySheet; names: SheetNames }) {
  const { db, session, sheet, names } = props;
  const { day, hash, head } = sheet.now;
  const t = await getTranslations('day');
  const kitchen = await kitchenOf(db, session.site);
  const signers = session.hands
    .map(({ person }) => kitchen.people.get(person))
    .filter((person) => person?.active && (person.role === 'manager' || person.role === 'owner'))
    .flatMap((person): Signer[] =>
      person
        ? [
            {
              id: person.person,
              name: person.name,
              initials: person.initials,
              role: person.role,
              tookReadings: tookReadings(day, person.person),
            },
          ]
        : [],
    );
  const open = exceptionsOf(day)
    .filter((one) => one.open)
    .map((one) => ({ ref: one.ref, tag: one.tag, head: exceptionWords(names, one).head }));
  if (sheet.state.state === 'signed') {
    const last = sheet.state.signed;
    return (
      <section className={css.signed}>
        <h2>{last?.body.name}</h2>
        <p>{t('sign.signed', { name: last?.body.name ?? '', at: last ? names.moment(last.at) : '' })}</p>
        <p className={css.note}>“{last?.body.meaning}”</p>
      </section>
    );
  }
  return (
    <Words names={['day', 'people', 'common']}>
      <SignBox
        key={day.day}
        day={day.day}
        over={day.over}
        read={{ hash, seq: head?.seq ?? 1 }}
        open={open}
        signers={signers}
      />
    </Words>
  );
}
