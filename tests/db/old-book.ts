import { v7 } from 'uuid';
import { append, createSite } from '#db/ledger.ts';
import { storeSignedText } from '#db/signed-texts.ts';
import type { Draft } from '#shared/entries/entry.ts';
import { isoOf, msOf } from '#shared/time.ts';
import { batchOf, cook, draft, hand, minutes, reading, site, step } from './drafts.ts';
import type { FreshBook } from './fresh-book.ts';

/** 10 March 2023 at noon in Chicago (UTC−6). */
export const longAgo = msOf('2023-03-10T18:00:00Z');
/** The moment of asking: 26 November 2026. */
export const today = msOf('2026-11-26T15:00:00Z');
export const oldBatch = '01993333-0000-7000-8000-0000000000b1';
export const signedText = '{"day":"2023-03-10"}';

export const owner = (at = longAgo) =>
  draft(
    'person',
    {
      person: cook,
      name: 'Orla Quint',
      initials: 'OQ',
      role: 'owner',
      title: null,
      language: 'en',
      phone: null,
      on_call: true,
      active: true,
    },
    at,
  );

/** Drafts of one night of a batch that was used up: batch, held hot, three figures, gone. */
export const night = (batch: string, at: number, figures = ['151.0', '152.0', '153.0']): Draft[] => [
  batchOf(batch, 1, at),
  step(batch, 'hot_hold', at),
  ...figures.map((typed, n) => reading(batch, typed, at + minutes(30 * (n + 1)), { spot: 'coldest' })),
  step(batch, 'gone', at + minutes(240)),
];

export const signature = (day: string, hash: string, at: number) =>
  draft(
    'signature',
    {
      day,
      revision: 1,
      from: `${day}T10:00:00Z`,
      to: isoOf(msOf(`${day}T10:00:00Z`) + 86_400_000),
      name: 'Orla Quint',
      role: 'owner',
      meaning: 'I have reviewed this day',
      open_items: [],
      hash,
      head: null,
    },
    at,
  );

/**
 * A kitchen with a signed night of 2023 and one of October 2026. Entries 1 and 2 are its set-up; 3 to 8 the old
 * night; 9 its signature; 10 to 15 the night of 2026.
 */
export async function oldBook({ db }: Pick<FreshBook, 'db'>): Promise<string> {
  const setUp = [{ ...site(), at: isoOf(longAgo) }, owner()];
  const made = await createSite(db, hand, setUp, () => longAgo);
  if (made.site === null) throw new Error('the site was refused');
  const writer = { ...hand, site: made.site };
  await append(db, writer, night(oldBatch, longAgo), () => longAgo + minutes(300));
  const hash = await storeSignedText(db, made.site, signedText);
  const signedAt = longAgo + minutes(20 * 60);
  await append(db, writer, [signature('2023-03-10', hash, signedAt)], () => signedAt);
  const lately = msOf('2026-10-16T21:00:00Z');
  await append(db, writer, night(v7(), lately), () => lately + minutes(300));
  return made.site;
}
