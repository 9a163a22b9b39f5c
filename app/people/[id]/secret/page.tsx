import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound, redirect } from 'next/navigation';
import { getFormatter, getTranslations } from 'next-intl/server';
import type { Asked } from '#app/people/AskSecret.tsx';
import { addressesOf } from '#app/reach/addresses.ts';
import { QrCode } from '#app/reach/QrCode.tsx';
import { codeNow } from '#app/server/code.ts';
import { getDb } from '#app/server/db.ts';
import { isHttps } from '#app/server/device-cookie.ts';
import { codeGiven } from '#app/server/invitation.ts';
import { kitchenOf } from '#app/server/kitchen-of.ts';
import { currentSession, type Session } from '#app/server/session.ts';
import { standingBy } from '#app/server/standing-by.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Words } from '#app/ui/Words.tsx';
import { sealKey } from '#db/seal.ts';
import { hasSecret } from '#db/secrets.ts';
import type { Kitchen } from '#lib/fold/book.ts';
import type { Body } from '#shared/entries/entry.ts';
import { wallClock } from '#shared/time.ts';
import css from '../../page.module.css';
import { Reset } from './Reset.tsx';
import { SetSecret } from './SetSecret.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('people.list');
  return { title: t('secret') };
}

type Props = { params: Promise<{ id: string }>; searchParams: Promise<{ code?: string }> };

/** A person's secret: set the first one, change one's own, take a forgotten one away, invite. */
export default async function SecretPage({ params, searchParams }: Props) {
  const [{ id }, { code }] = await Promise.all([params, searchParams]);
  const session = await currentSession();
  if (session === null) redirect('/sign-in');
  const db = await getDb();
  const kitchen = await kitchenOf(db, session.site);
  const person = kitchen.people.get(id);
  if (!person?.active) notFound();
  const given = code === undefined ? null : await codeGiven(db, session.site, kitchen, code);
  const t = await getTranslations('people');
  return (
    <Sheet>
      <Headband
        title={t('set.title', { name: person.name })}
        back={{ href: '/people', words: t('list.title') }}
      />
      <main>
        <Words names={['people']}>
          {(await hasSecret(db, session.site, id)) ? (
            <>
              <SetSecret person={asked(person)} first={false} invitation={null} />
              <Reset person={asked(person)} may={mayReset(session, kitchen, id)} />
            </>
          ) : given?.person === id ? (
            <>
              <p className={css.part}>{t('enrol.invited', { name: person.name })}</p>
              <SetSecret person={asked(person)} first invitation={code ?? null} />
            </>
          ) : (
            <First session={session} kitchen={kitchen} person={person} />
          )}
        </Words>
      </main>
    </Sheet>
  );
}

const asked = ({ person, name, initials, role }: Body<'person'>): Asked => ({
  id: person,
  name,
  initials,
  role,
});

const mayReset = (session: Session, kitchen: Kitchen, person: string): Asked[] =>
  standingBy(session, kitchen, person).flatMap((by) => {
    const found = kitchen.people.get(by);
    return found ? [asked(found)] : [];
  });

/** The first secret: here, with someone standing by, or on the person's own phone by an invitation. */
async function First(props: { session: Session; kitchen: Kitchen; person: Body<'person'> }) {
  const { session, kitchen, person } = props;
  const t = await getTranslations('people');
  const may = standingBy(session, kitchen, person.person);
  const by = may.find((one) => one === session.hand) ?? may[0];
  if (by === undefined) {
    return <p className={css.part}>{t('sign_in.no_secret_help', { name: person.name })}</p>;
  }
  const { zone = 'UTC', clock = '24' } = kitchen.site ?? {};
  const format = await getFormatter();
  const about = { what: 'person', site: session.site, by, person: person.person } as const;
  const { code, until } = codeNow(await sealKey(await getDb()), about, Date.now());
  const headersAsked = await headers();
  const host = headersAsked.get('host');
  const [address] = addressesOf({ host, https: isHttps(headersAsked, `http://${host ?? ''}`) });
  const link = `${address ?? ''}/sign-in?code=${code}`;
  return (
    <>
      <SetSecret person={asked(person)} first invitation={null} />
      <details className={css.part}>
        <summary className={css.summary}>{t('set.invite_show')}</summary>
        <p className={css.note}>
          {t('set.invite_note', {
            name: person.name,
            time: `${format.dateTime(until, { weekday: 'long', timeZone: zone })} ${wallClock(until, zone, clock)}`,
          })}
        </p>
        {address === undefined ? null : (
          <QrCode text={link} label={t('set.invite_qr', { name: person.name })} />
        )}
        <p className={css.name}>{code}</p>
      </details>
    </>
  );
}
