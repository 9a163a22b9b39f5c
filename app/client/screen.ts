import type { Book } from '#lib/fold/book.ts';

/** What a screen is drawn from: by the server out of the book, or by the phone out of what it last had of it. */
export type ScreenGiven = {
  book: Book;
  site: string;
  hand: string | null; // who writes now; null = nobody
  locale: 'en' | 'es';
};
