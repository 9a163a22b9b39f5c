import type { Metadata } from 'next';
import { getTranslations } from 'next-intl/server';
import { getDb } from '#app/server/db.ts';
import { kitchenOf } from '#app/server/kitchen-of.ts';
import { entrance } from '#app/server/session.ts';
import { Foot } from '#app/ui/Foot.tsx';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Words } from '#app/ui/Words.tsx';
import type { Body } from '#shared/entries/entry.ts';
import { wallClock } from '#shared/time.ts';
import css from './page.module.css';
import { SignOut } from './SignOut.tsx';
import { ThisDevice } from './ThisDevice.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('people.list');
  return { title: t('title') };
}

/** Who works here, who is signed in on this device since when, and how the device shows its pages. */
export default async function PeoplePage() {
  const session = await entrance();
  const kitchen = await kitchenOf(await getDb(), session.site);
  const t = await getTranslations('people.list');
  const common = await getTranslations('common');
  const { zone = 'UTC', clock = '24' } = kitchen.site ?? {};
  return (
    <Sheet>
      <Headband title={t('title')} back={{ href: '/', words: common('kitchen_now') }} />
      <main>
        <Words names={['people']}>
          <section className={css.part}>
            <h2>{t('here')}</h2>
            {session.hands.map(({ person, since }) => (
              <div key={person} className={css.row}>
                <span className={css.initials}>{kitchen.people.get(person)?.initials}</span>
                <span>
                  <span className={css.name}>{kitchen.people.get(person)?.name}</span>
                  <br />
                  <span className={css.note}>{t('since', { time: wallClock(since, zone, clock) })}</span>
                </span>
                <SignOut person={person} />
              </div>
            ))}
            {session.hands.length > 1 ? <SignOut person={null} /> : null}
          </section>
          <section className={css.part}>
            <h2>{t('everybody')}</h2>
            {[...kitchen.people.values()].map((person) => (
              <Person key={person.person} person={person} />
            ))}
          </section>
          <section className={css.part}>
            <h2>{t('device')}</h2>
            <ThisDevice
              language={session.language}
              room={session.room}
              languages={(['en', 'es'] as const).map((key) => ({ key, words: common(`language.${key}`) }))}
            />
          </section>
        </Words>
      </main>
      <Foot>
        <KeyLink kind="plain" href="/reach">
          {t('reach')}
        </KeyLink>
        <KeyLink href="/sign-in">{t('sign_in')}</KeyLink>
      </Foot>
    </Sheet>
  );
}

async function Person({ person }: { person: Body<'person'> }) {
  const t = await getTranslations('people.list');
  const common = await getTranslations('common');
  const about = [
    person.title ?? common(`role.${person.role}`),
    person.phone ?? '',
    person.on_call ? t('on_call') : '',
    person.active ? '' : t('gone'),
  ];
  return (
    <div className={css.row}>
      <span className={css.initials}>{person.initials}</span>
      <span>
        <span className={css.name}>{person.name}</span>
        <br />
        <span className={css.note}>{about.filter(Boolean).join(', ')}</span>
      </span>
      {person.active && person.role !== 'reader' ? (
        <KeyLink kind="plain" href={`/people/${person.person}/secret`}>
          {t('secret')}
        </KeyLink>
      ) : null}
    </div>
  );
}
