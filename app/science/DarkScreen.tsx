import { useTranslations } from 'next-intl';
import type { ScreenGiven } from '#app/client/screen.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { assumed } from '#lib/between/assumed.ts';
import { type DarkBatch, darkBatches } from '#lib/between/dark.ts';
import type { Book } from '#lib/fold/book.ts';
import { wallClock } from '#shared/time.ts';
import { DarkBatchPart } from './DarkBatchPart.tsx';
import { poweredPlaces } from './powered.ts';
import { degreesF, type Site, timeAt, widthF } from './said.ts';
import css from './science.module.css';

/** Every batch that stood without power: what the record cannot clear first, with the sums and what they suppose. */
export function DarkScreen({ given }: { given: ScreenGiven }) {
  const { book, locale } = given;
  const t = useTranslations('science.dark');
  const common = useTranslations('common');
  const set = book.kitchen.site;
  const site: Site = {
    zone: set?.zone ?? 'UTC',
    clock: set?.clock ?? '24',
    locale,
    unit: set?.unit ?? 'degF',
    now: book.asOf,
  };
  const found = darkBatches(book);
  const open = found.filter(({ cleared }) => !cleared);
  const covered = found.filter(({ cleared }) => cleared);
  return (
    <Sheet width="tablet">
      <Headband
        back={{ href: '/', words: common('kitchen_now') }}
        clock={wallClock(book.asOf, site.zone, site.clock)}
      />
      <main className={css.page}>
        <h1>{t('title')}</h1>
        <Cuts book={book} site={site} />
        <nav className={css.keys}>
          <KeyLink href="/kitchen/power">{t('write')}</KeyLink>
          {poweredPlaces(book, true).length > 0 ? (
            <KeyLink href="/kitchen/power?back=1">{t('write_back')}</KeyLink>
          ) : null}
        </nav>
        {found.length === 0 ? (
          <>
            <p>{t('none')}</p>
            <p className={css.note}>{t('none_help')}</p>
          </>
        ) : (
          <>
            {open.length > 0 ? (
              <>
                <h2>{t('not_cleared')}</h2>
                <p className={css.note}>{t('cannot')}</p>
                <List batches={open} book={book} site={site} />
              </>
            ) : null}
            {covered.length > 0 ? (
              <>
                <h2>{t('covered')}</h2>
                <List batches={covered} book={book} site={site} />
              </>
            ) : null}
            <h2>{t('assumed')}</h2>
            <p className={css.note}>
              {t('assumed_text', {
                room: degreesF(assumed.coldestRoom, site.unit),
                u: widthF(assumed.reading, site.unit),
              })}
            </p>
          </>
        )}
        <NoRelease />
      </main>
    </Sheet>
  );
}

function NoRelease() {
  const t = useTranslations('science');
  return <p className={css.note}>{t('no_release')}</p>;
}

function List({ batches, book, site }: { batches: readonly DarkBatch[]; book: Book; site: Site }) {
  return (
    <div>
      {batches.map((each) => (
        <DarkBatchPart key={each.run.key} dark={each} book={book} site={site} />
      ))}
    </div>
  );
}

/** The cuts by the book, the newest first. */
function Cuts({ book, site }: { book: Book; site: Site }) {
  const t = useTranslations('science.dark');
  const cuts = [...book.off]
    .flatMap(([equipment, spans]) =>
      spans.map((span) => ({ ...span, place: book.kitchen.equipment.get(equipment)?.name ?? '' })),
    )
    .sort((a, b) => b.at - a.at);
  if (cuts.length === 0) return null;
  return (
    <ul>
      {cuts.map(({ place, at, until }) => (
        <li key={`${place} ${at}`}>
          {until === null
            ? t('since', { place, time: timeAt(at, site) })
            : t('was', { place, from: timeAt(at, site), to: timeAt(until, site) })}
        </li>
      ))}
    </ul>
  );
}
