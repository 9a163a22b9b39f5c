import { NextIntlClientProvider } from 'next-intl';
import { useEffect, useMemo, useState } from 'react';
import { InSite } from '#app/client/InSite.tsx';
import { lastBook, takeBook } from '#app/client/take-book.ts';
import type { PhoneBook } from '#app/outbox/phone-store.ts';
import { useOutbox } from '#app/outbox/useOutbox.ts';
import { foldNow } from '#lib/fold/fold-now.ts';
import { withDrafts } from '#lib/fold/not-in-the-book.ts';
import { messages } from '#shared/words/messages.ts';
import { AwayBand } from './AwayBand.tsx';
import { AwayScreen } from './AwayScreen.tsx';
import { Nothing } from './Nothing.tsx';
import { placeOf } from './place-of.ts';

/** The kitchen as this phone knows it: the book as last had, and what was written on this phone since. */
export function Away() {
  const [book, setBook] = useState<PhoneBook | 'none' | null>(null);
  useEffect(() => {
    void lastBook().then((found) => setBook(found ?? 'none'));
  }, []);
  if (book === null) return null;
  const lang = book === 'none' ? (document.documentElement.lang === 'es' ? 'es' : 'en') : book.lang;
  return (
    <NextIntlClientProvider locale={lang} messages={messages[lang]} timeZone="UTC">
      {book === 'none' ? <Nothing /> : <Known kept={book} onBook={setBook} />}
    </NextIntlClientProvider>
  );
}

const tickMs = 15_000;

function Known({ kept, onBook }: { kept: PhoneBook; onBook: (book: PhoneBook | 'none') => void }) {
  const { now: outbox } = useOutbox(kept.site);
  const [now, setNow] = useState(() => Date.now());
  const [back, setBack] = useState(false);
  useEffect(() => {
    const look = async (): Promise<void> => {
      setNow(Date.now());
      const fresh = await takeBook();
      if (fresh === null) return setBack(false);
      if (fresh === 'revoked') return onBook('none'); // the kitchen does not know this phone any more
      onBook(fresh);
      setBack(true);
    };
    const timer = setInterval(() => void look(), tickMs);
    const online = (): void => void look();
    window.addEventListener('online', online);
    return () => {
      clearInterval(timer);
      window.removeEventListener('online', online);
    };
  }, [onBook]);
  const book = useMemo(() => {
    const drafts = outbox.held.filter(({ refused }) => refused === null).map(({ draft }) => draft);
    return foldNow(withDrafts(kept.entries, drafts, kept.site), now + kept.bookAhead);
  }, [kept, outbox.held, now]);
  const place = placeOf(new URL(window.location.href));
  const given = { book, site: kept.site, hand: kept.hand, locale: kept.lang };
  return (
    <InSite site={kept.site}>
      <AwayBand kept={kept} site={book.kitchen.site} back={back} screen={place.screen} />
      <AwayScreen given={given} signedIn={kept.hands} place={place} />
    </InSite>
  );
}
