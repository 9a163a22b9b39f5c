import { NextIntlClientProvider } from 'next-intl';
import { getLocale } from 'next-intl/server';
import type { ReactNode } from 'react';
import { type Messages, messages } from '#shared/words/messages.ts';

/**
 * Words for the client parts below: those of the parts, and the namespaces named. Messages that no client part
 * needs are never sent to the phone. A screen whose client parts need its own words wraps them once more.
 */
export async function Words({ names, children }: { names: (keyof Messages)[]; children: ReactNode }) {
  const locale = (await getLocale()) === 'es' ? 'es' : 'en';
  const all = messages[locale];
  const sent = Object.fromEntries((['parts', ...names] as const).map((name) => [name, all[name]]));
  return (
    <NextIntlClientProvider locale={locale} messages={sent} timeZone="UTC">
      {children}
    </NextIntlClientProvider>
  );
}
