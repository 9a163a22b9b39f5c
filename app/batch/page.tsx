import Link from 'next/link';
import { getLocale, getTranslations } from 'next-intl/server';
import { loadBook } from '#app/server/book.ts';
import { entrance } from '#app/server/session.ts';
import { Cell } from '#app/ui/Cell.tsx';
import { Foot } from '#app/ui/Foot.tsx';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import type { Batch, Book } from '#lib/fold/book.ts';
import css from './batch.module.css';
import { latestWorst } from './latest.ts';
import { foodSaid, placeName, sides } from './view.ts';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('batch');
  return { title: t('title') };
}

/** Every batch that is in the kitchen, and those that left it within the last two days. */
export default async function BatchesPage() {
  const session = await entrance();
  const book = await loadBook(session);
  const t = await getTranslations('batch');
  const common = await getTranslations('common');
  const all = [...book.batches.values()].sort((a, b) => b.at - a.at);
  const open = all.filter((batch) => batch.open);
  const gone = all.filter((batch) => !batch.open);
  return (
    <Sheet>
      <Headband title={t('title')} back={{ href: '/', words: common('kitchen_now') }} />
      {all.length === 0 ? <p className={css.empty}>{t('list_empty')}</p> : null}
      <Group title={t('list_open')} batches={open} book={book} />
      <Group title={t('list_gone')} batches={gone} book={book} />
      <Foot>
        <KeyLink href="/batch/new" kind="save" wide>
          {t('new')}
        </KeyLink>
      </Foot>
    </Sheet>
  );
}

async function Group({ title, batches, book }: { title: string; batches: Batch[]; book: Book }) {
  if (batches.length === 0) return null;
  return (
    <section>
      <h2 className={css.group}>{title}</h2>
      {batches.map((batch) => (
        <Row key={batch.id} batch={batch} book={book} />
      ))}
    </section>
  );
}

async function Row({ batch, book }: { batch: Batch; book: Book }) {
  const t = await getTranslations('batch');
  const locale = (await getLocale()) === 'es' ? 'es' : 'en';
  const run = batch.runs.findLast((each) => each.end === null);
  const look = run === undefined ? null : latestWorst(run);
  const places = [...new Set(batch.runs.filter((each) => each.end === null).map((each) => each.equipment))];
  const blocked = batch.pieces.some(({ standing }) => standing === 'do_not_serve');
  const bad = look !== null && run !== undefined && sides(book, [run]).get(look.id) === 'bad';
  return (
    <Link href={`/batch/${batch.id}`} prefetch={false} className={css.row}>
      <span>
        <b>{batch.name}</b> {foodSaid(batch.food, locale)}
        <span className={css.note}>
          {places.map((place) => placeName(book, place) ?? t('place_unknown')).join(', ')}
          {blocked ? ` · ${t('do_not_serve')}` : ''}
        </span>
      </span>
      {look === null ? null : (
        <Cell typed={look.typed} unit={look.unit} dress={bad ? 'cut' : look.suspect ? 'wavy' : 'solid'} />
      )}
    </Link>
  );
}
