import { getLocale, getTranslations } from 'next-intl/server';
import { Correct } from '#app/batch/Correct.tsx';
import { countedAs } from '#app/batch/counted.ts';
import { FormSheet } from '#app/batch/FormSheet.tsx';
import { timeSaid } from '#app/batch/said.ts';
import { InSite } from '#app/client/InSite.tsx';
import { loadBook } from '#app/server/book.ts';
import { entrance } from '#app/server/session.ts';
import type { HistoryRow } from '#app/ui/History.tsx';
import { Words } from '#app/ui/Words.tsx';
import { initialsOf } from '#lib/fold/ask.ts';
import type { Batch, Book, Look } from '#lib/fold/book.ts';
import { msOf } from '#shared/time.ts';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string; entry: string }> };

/** One reading, corrected: the figure, the piece, the spot, or taken back. */
export default async function CorrectPage({ params }: Props) {
  const session = await entrance();
  const [{ id, entry }, book] = await Promise.all([params, loadBook(session)]);
  const t = await getTranslations('batch');
  const batch = book.batches.get(id);
  const look = book.looks.get(entry);
  const sheet = {
    title: t('correction.title'),
    back: { href: `/batch/${id}`, words: batch?.name ?? t('title') },
    nobody: session.hand === null ? { next: `/batch/${id}/correct/${entry}` } : null,
  };
  if (look === undefined)
    return (
      <FormSheet {...sheet} nobody={null}>
        <p>{t('correction.not_found')}</p>
      </FormSheet>
    );
  return (
    <Words names={['batch', 'common', 'problem', 'remedy']}>
      <InSite site={session.site}>
        <FormSheet {...sheet}>
          <Correct
            by={session.hand ?? ''}
            batch={id}
            entry={entry}
            now={{
              value: look.typed,
              piece: look.piece === null ? '' : String(look.piece),
              spot: look.spot ?? '',
            }}
            unit={look.unit}
            pieces={numbersOf(batch, look)}
            history={await history(book, look)}
          />
        </FormSheet>
      </InSite>
    </Words>
  );
}

const numbersOf = (batch: Batch | undefined, look: Look): number[] =>
  look.batch === null ? [] : (batch?.pieces ?? []).flatMap(({ number }) => (number === null ? [] : [number]));

/** What was written first, then each correction with its reason. */
async function history(book: Book, look: Look): Promise<HistoryRow[]> {
  const t = await getTranslations('batch');
  const common = await getTranslations('common');
  const { site } = book.kitchen;
  const at = {
    zone: site?.zone ?? 'UTC',
    clock: site?.clock ?? ('24' as const),
    locale: await getLocale(),
    now: book.asOf,
  };
  const place = [
    look.piece === null
      ? null
      : common('piece', { number: look.piece, counted: countedAs(book.batches.get(look.batch ?? '')) }),
    look.spot === null ? null : common(`spot.${look.spot}`),
  ]
    .filter((word) => word !== null)
    .join(', ');
  const values = (book.amendments.get(look.id) ?? []).filter(({ body }) => body.field === 'value');
  const first: HistoryRow = {
    time: timeSaid(look.at, at),
    hand: initialsOf(book, look.by),
    place,
    note: t('correction.first'),
    typed: values[0]?.body.from ?? look.typed,
    unit: look.unit,
    struck: values.length > 0,
  };
  const later = values.map(
    ({ at: when, by, body }, i): HistoryRow => ({
      time: timeSaid(msOf(when), at),
      hand: initialsOf(book, by),
      place,
      note: body.reason,
      typed: body.to,
      unit: look.unit,
      struck: i < values.length - 1,
    }),
  );
  return [first, ...later];
}
