import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { getTranslations } from 'next-intl/server';
import { isHttps } from '#app/server/device-cookie.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { keyClass } from '#app/ui/Key.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import css from '../page.module.css';
import { secureWays } from '../secure-ways.ts';

export const dynamic = 'force-dynamic';

export async function generateMetadata(): Promise<Metadata> {
  const t = await getTranslations('reach.secure');
  return { title: t('title') };
}

/**
 * How a phone comes to the sealed address. It asks for no session: a phone reads it before it is let in, and the
 * certificate is no secret.
 */
export default async function SecurePage() {
  const t = await getTranslations('reach.secure');
  const common = await getTranslations('common');
  const asked = await headers();
  const host = asked.get('host');
  const { named, own } = secureWays(host);
  return (
    <Sheet>
      <Headband title={t('title')} back={{ href: '/', words: common('kitchen_now') }} />
      <main className={css.main}>
        {isHttps(asked, `http://${host ?? ''}`) ? (
          <Slip kind="note" bar title={t('here')}>
            <p>{t('here_why')}</p>
          </Slip>
        ) : (
          <p className={css.part}>{t('why')}</p>
        )}
        {named === null ? null : (
          <section className={css.part}>
            <h2>{t('named_title')}</h2>
            <p>{t('named')}</p>
            <Addresses all={[named]} />
          </section>
        )}
        {own === null ? <NoDoor named={named !== null} /> : <Steps {...own} />}
        <section className={css.part}>
          <h2>{t('other_title')}</h2>
          <p>{t('other')}</p>
        </section>
      </main>
    </Sheet>
  );
}

async function NoDoor({ named }: { named: boolean }) {
  const t = await getTranslations('reach.secure');
  if (named) return null;
  return (
    <Slip kind="note" bar title={t('none_title')}>
      <p>{t('none')}</p>
    </Slip>
  );
}

/** Common practice on the two kinds of phone; the menus are worded a little differently from one to the next. */
async function Steps({ addresses, fingerprint }: { addresses: string[]; fingerprint: string }) {
  const t = await getTranslations('reach.secure');
  return (
    <>
      <section className={css.part}>
        <h2>{t('download_title')}</h2>
        <p className={css.note}>{t('first')}</p>
        <a className={keyClass('save', true)} href="/reach/certificate" download>
          <span>{t('download')}</span>
        </a>
        <p className={css.note}>{t('bound')}</p>
      </section>
      <section className={css.part}>
        <h2>{t('compare_title')}</h2>
        <p>{t('compare')}</p>
        <Fingerprint of={fingerprint} />
      </section>
      <section className={css.part}>
        <h2>{t('accept_title')}</h2>
        <h3>{t('iphone_title')}</h3>
        <ol className={css.steps}>
          <li>{t('iphone.open')}</li>
          <li>{t('iphone.install')}</li>
          <li>{t('iphone.trust')}</li>
        </ol>
        <h3>{t('android_title')}</h3>
        <ol className={css.steps}>
          <li>{t('android.open')}</li>
          <li>{t('android.install')}</li>
          <li>{t('android.look')}</li>
        </ol>
        <p className={css.note}>{t('menus')}</p>
      </section>
      <section className={css.part}>
        <h2>{t('open_title')}</h2>
        <p>{t('open')}</p>
        <Addresses all={addresses} />
      </section>
    </>
  );
}

const Addresses = ({ all }: { all: string[] }) =>
  all.map((address) => (
    <a key={address} className={keyClass('plain', true)} href={address}>
      <span className={css.link}>{address}</span>
    </a>
  ));

/** In rows of eight bytes: it is compared by eye. */
const Fingerprint = ({ of }: { of: string }) => (
  <p className={css.fingerprint}>
    {(of.match(/(?:[0-9A-F]{2}:?){1,8}/g) ?? [of]).map((row) => (
      <span key={row}>{row}</span>
    ))}
  </p>
);
