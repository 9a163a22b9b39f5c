import 'server-only';
import { getLocale } from 'next-intl/server';
import type { ScreenGiven } from '#app/client/screen.ts';
import { loadBook } from './book.ts';
import { entrance } from './session.ts';

/** What the screens of this session are drawn from, as of now. Sends the browser on when nobody has signed in. */
export async function screenGiven(): Promise<ScreenGiven> {
  const session = await entrance();
  return {
    book: await loadBook(session),
    site: session.site,
    hand: session.hand,
    locale: (await getLocale()) === 'es' ? 'es' : 'en',
  };
}
