import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { getTranslations } from 'next-intl/server';
import { codeNow } from '#app/server/code.ts';
import { getDb } from '#app/server/db.ts';
import { isHttps } from '#app/server/device-cookie.ts';
import { kitchenOf } from '#app/server/kitchen-of.ts';
import { entrance, type Session } from '#app/server/session.ts';
import { standingBy } from '#app/server/standing-by.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import { sealKey } from '#db/seal.ts';
import { wallClock } from '#shared/time.ts';
import { addressesOf, onlyHere } from './addresses.ts';
import css from './page.module.css';
import { QrCode } from './QrCode.tsx';
import { namedAddress } from './secure-ways.ts';

export const dynamic = 'force-dynamic';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('reach');
  return { title: t('title') };
}

/** The address of this server for a phone, as words and as a square code, with what lets a new device in. */
export default async function ReachPage() {
  const session = await entrance();
  const t = await getTranslations('reach');
  const common = await getTranslations('common');
  const asked = await headers();
  const host = asked.get('host');
  const https = isHttps(asked, `http://${host ?? ''}`);
  const named = namedAddress();
  const [address, ...others] = [...(named === null ? [] : [named]), ...addressesOf({ host, https })].filter(
    (one, i, all) => all.indexOf(one) === i,
  );
  const code = await codeOf(session);
  return (
    <Sheet>
      <Headband title={t('title')} back={{ href: '/', words: common('kitchen_now') }} />
      <main className={css.main}>
        {address === undefined ? (
          <p className={css.part}>{t(onlyHere() ? 'only_here' : 'no_network')}</p>
        ) : (
          <section className={css.part}>
            <p>{t('how')}</p>
            <QrCode
              text={code ? `${address}/sign-in?code=${code.code}` : address}
              label={t('qr', { address })}
            />
            <p className={css.address}>{address}</p>
            {others.length > 0 ? (
              <p className={css.note}>
                {t('other')}: {others.join(', ')}
              </p>
            ) : null}
          </section>
        )}
        {address?.startsWith('https:') ? (
          <p className={css.part}>{t('sealed')}</p>
        ) : (
          <Slip kind="note" bar title={t('plain_title')}>
            <p>{t('plain')}</p>
            <KeyLink kind="plain" href="/reach/secure">
              {t('secure.how')}
            </KeyLink>
          </Slip>
        )}
        <section className={css.part}>
          <h2>{t('code_title')}</h2>
          {code ? (
            <>
              <p className={css.code}>{code.code}</p>
              <p className={css.note}>{t('code_note', { time: code.until, name: code.name })}</p>
            </>
          ) : (
            <>
              <p>{t('code_needs')}</p>
              <KeyLink href="/sign-in?next=/reach">{t('sign_in')}</KeyLink>
            </>
          )}
        </section>
      </main>
    </Sheet>
  );
}

/** The code that lets a device in, given by someone who may and is signed in here; null = nobody is. */
async function codeOf(session: Session) {
  const db = await getDb();
  const kitchen = await kitchenOf(db, session.site);
  const may = standingBy(session, kitchen, null);
  const by = may.find((person) => person === session.hand) ?? may[0];
  if (by === undefined) return null;
  const { zone = 'UTC', clock = '24' } = kitchen.site ?? {};
  const { code, until } = codeNow(await sealKey(db), { what: 'device', site: session.site, by }, Date.now());
  return { code, until: wallClock(until, zone, clock), name: kitchen.people.get(by)?.name ?? '' };
}
