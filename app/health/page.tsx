import type { Metadata } from 'next';
import { getLocale, getTranslations } from 'next-intl/server';
import { getDb } from '#app/server/db.ts';
import { findingWords } from '#app/server/finding-words.ts';
import { kitchenOf } from '#app/server/kitchen-of.ts';
import { managerHere } from '#app/server/put-out.ts';
import { entrance, type Session } from '#app/server/session.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import type { Db } from '#db/connect.ts';
import { clocksNow } from '#db/device-clock.ts';
import { devicesOf } from '#db/devices.ts';
import { healthOf } from '#db/health.ts';
import { deviceFindings, type Finding, findingsOf } from '#db/health-findings.ts';
import type { Kitchen } from '#lib/fold/book.ts';
import css from './page.module.css';
import { BackupPart, ChainPart, ClockPart, DevicesPart, DiskPart } from './parts.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('health');
  return { title: t('title') };
}

/** How the book stands, in words, for whoever answers for it. */
export default async function HealthPage() {
  const session = await entrance();
  const db = await getDb();
  const kitchen = await kitchenOf(db, session.site);
  const t = await getTranslations('health');
  const setup = await getTranslations('setup');
  return (
    <Sheet>
      <Headband title={t('title')} back={{ href: '/set-up', words: setup('title') }} />
      <main className={css.main}>
        {managerHere(session, kitchen) !== undefined ? (
          <Standing db={db} session={session} kitchen={kitchen} />
        ) : (
          <>
            <p className={css.part}>{t('managers')}</p>
            <KeyLink href="/sign-in?next=/health">{setup('cannot.sign_in')}</KeyLink>
          </>
        )}
      </main>
    </Sheet>
  );
}

async function Standing({ db, session, kitchen }: { db: Db; session: Session; kitchen: Kitchen }) {
  const health = await healthOf(db);
  const devices = await devicesAndClocks(db, session.site);
  const inUse = devices.flatMap(({ name, revoked, clock }) =>
    revoked || clock === null ? [] : [{ name, offMs: clock.offMs }],
  );
  const { zone = 'UTC', clock = '24' } = kitchen.site ?? {};
  const findings = [...findingsOf(health), ...deviceFindings(inUse)];
  return (
    <>
      <Findings findings={findings} />
      <DiskPart health={health} />
      <ChainPart head={health.heads.find(({ site }) => site === session.site)} />
      <BackupPart backup={health.backup} zone={zone} clock={clock} />
      <ClockPart health={health} devices={devices} zone={zone} clock={clock} />
      <DevicesPart devices={devices} own={session.device} zone={zone} clock={clock} />
    </>
  );
}

async function devicesAndClocks(db: Db, site: string) {
  const [devices, clocks] = await Promise.all([devicesOf(db, site), clocksNow(db, site, Date.now())]);
  const byDevice = new Map(clocks.map((measure) => [measure.device, measure]));
  return devices.map(({ device, name, enrolledAt, revokedAt }) => ({
    device,
    name,
    letInAt: Date.parse(enrolledAt),
    revoked: revokedAt !== null,
    clock: byDevice.get(device) ?? null,
  }));
}

async function Findings({ findings }: { findings: readonly Finding[] }) {
  const t = await getTranslations('health');
  const locale = (await getLocale()) === 'es' ? 'es' : 'en';
  if (findings.length === 0) return <p className={css.part}>{t('nothing')}</p>;
  return (
    <Slip kind="note" bar title={t('asks')}>
      {findings.map((finding) => {
        const { problem, remedy } = findingWords(finding, locale);
        return (
          <p key={problem}>
            {problem} {remedy}
          </p>
        );
      })}
    </Slip>
  );
}
