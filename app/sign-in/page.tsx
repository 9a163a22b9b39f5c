import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { PlainLinkWarning } from '#app/reach/PlainLinkWarning.tsx';
import { getDb } from '#app/server/db.ts';
import { demoDevice } from '#app/server/demo.ts';
import { kitchenOf } from '#app/server/kitchen-of.ts';
import { currentSession, type Session } from '#app/server/session.ts';
import { sessionTimes } from '#app/server/session-times.ts';
import { siteExists } from '#app/server/sites.ts';
import { standingBy } from '#app/server/standing-by.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import { Words } from '#app/ui/Words.tsx';
import { demoSecrets } from '#db/demo/fill.ts';
import { hasSecret } from '#db/secrets.ts';
import type { Kitchen } from '#lib/fold/book.ts';
import { wallClock } from '#shared/time.ts';
import { Enrol } from './Enrol.tsx';
import css from './page.module.css';
import { type PersonHere, SignIn } from './SignIn.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('people.sign_in');
  return { title: t('title') };
}

type Asked = { next?: string; code?: string; person?: string };

/** A path of our own, never another site's address. */
const ownPath = (next: string | undefined): string => (next && /^\/(?![/\\])/.test(next) ? next : '/');

export default async function SignInPage({ searchParams }: { searchParams: Promise<Asked> }) {
  const asked = await searchParams;
  const session = await currentSession();
  if (session === null) {
    if (!(await siteExists())) redirect('/first-run');
    return (
      <Sheet>
        <Headband title="Holdproof" />
        <main>
          <Words names={['people']}>
            <Enrol code={asked.code ?? ''} next={ownPath(asked.next)} />
          </Words>
          <PlainLinkWarning />
        </main>
      </Sheet>
    );
  }
  return <Known session={session} asked={asked} />;
}

async function Known({ session, asked }: { session: Session; asked: Asked }) {
  const db = await getDb();
  const kitchen = await kitchenOf(db, session.site);
  const t = await getTranslations('people.sign_in');
  const { zone = 'UTC', clock = '24', name = '' } = kitchen.site ?? {};
  return (
    <Sheet width="tablet">
      <Headband
        title={t('device', { site: name, device: session.deviceName })}
        clock={wallClock(Date.now(), zone, clock)}
      />
      <main className={css.main}>
        {session.deviceName === demoDevice ? (
          <Slip kind="note" bar title={t('demo_title')}>
            <p>{t('demo', demoSecrets)}</p>
          </Slip>
        ) : null}
        <Words names={['people']}>
          <SignIn
            people={await peopleHere(session, kitchen)}
            chosen={asked.person ?? session.hand}
            next={ownPath(asked.next)}
            someoneIn={session.hands.length > 0}
            standBy={standBy(session, kitchen)}
          />
        </Words>
        <PlainLinkWarning />
      </main>
      <footer className={css.foot}>
        {(['wrong', 'else', 'idle'] as const).map((what) => (
          <p key={what}>
            <b>{t(`${what}_title`, { minutes: sessionTimes.handIdleMin })}</b> {t(`${what}_note`)}
          </p>
        ))}
      </footer>
    </Sheet>
  );
}

/** Whose first secret may be set here now, because someone who may let them in has signed in. */
const standBy = (session: Session, kitchen: Kitchen): string[] =>
  [...kitchen.people.keys()].filter((person) => standingBy(session, kitchen, person).length > 0);

async function peopleHere(session: Session, kitchen: Kitchen): Promise<PersonHere[]> {
  const db = await getDb();
  const t = await getTranslations();
  const { zone = 'UTC', clock = '24' } = kitchen.site ?? {};
  const writing = [...kitchen.people.values()].filter(({ active, role }) => active && role !== 'reader');
  return Promise.all(
    writing.map(async ({ person, name, initials, role, title }) => {
      const on = session.hands.find((hand) => hand.person === person);
      const job = title ?? t(`common.role.${role}`);
      const since = on && wallClock(on.since, zone, clock);
      return {
        id: person,
        name,
        initials,
        role,
        note: since ? t('people.sign_in.on_since', { role: job, time: since }) : job,
        hasSecret: await hasSecret(db, session.site, person),
      };
    }),
  );
}
