import { cookies } from 'next/headers';
import { getRequestConfig } from 'next-intl/server';
import { type Language, messages } from '#shared/words/messages.ts';

/** The language of this request: what this device was last set to, else English. */
export default getRequestConfig(async () => {
  const asked = (await cookies()).get('language')?.value;
  const locale: Language = asked === 'es' ? 'es' : 'en';
  return { locale, messages: messages[locale], timeZone: 'UTC' };
});
