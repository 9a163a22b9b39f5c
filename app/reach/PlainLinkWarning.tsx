import { headers } from 'next/headers';
import { getTranslations } from 'next-intl/server';
import { isHttps } from '#app/server/device-cookie.ts';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import { isLoopback } from './addresses.ts';

/** Where secrets would travel over http through a network: says so. Nothing on https or on the machine itself. */
export async function PlainLinkWarning() {
  const t = await getTranslations('reach');
  const asked = await headers();
  const host = asked.get('host') ?? '';
  if (isLoopback(host) || isHttps(asked, `http://${host}`)) return null;
  return (
    <Slip kind="note" bar title={t('plain_title')}>
      <p>{t('plain')}</p>
      <KeyLink kind="plain" href="/reach/secure">
        {t('secure.how')}
      </KeyLink>
    </Slip>
  );
}
