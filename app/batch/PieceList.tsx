import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { Cell } from '#app/ui/Cell.tsx';
import type { Piece } from '#lib/fold/book.ts';
import css from './batch.module.css';
import { timeSaid } from './said.ts';
import { type BatchView, placeName, sides } from './view.ts';

/** Every piece: whether it may be served, where it is, its last look. The watch piece is marked by words. */
export function PieceList({ view }: { view: BatchView }) {
  const t = useTranslations('batch');
  const { batch } = view;
  const left = batch.pieces.filter(({ standing }) => standing !== 'gone').length;
  return (
    <section className={css.pieces}>
      <h2>{t('pieces')}</h2>
      {batch.count === null ? null : (
        <p className={css.note}>{t('pieces_left', { left, count: batch.count })}</p>
      )}
      <ul>
        {batch.pieces.map((piece) => (
          <li key={piece.number ?? 0}>
            <PieceRow view={view} piece={piece} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function PieceRow({ view, piece }: { view: BatchView; piece: Piece }) {
  const t = useTranslations('batch');
  const common = useTranslations('common');
  const { book, batch } = view;
  const at = { ...view, now: book.asOf };
  const look = piece.lastLook;
  const bad = look !== null && sides(book, batch.runs).get(look.id) === 'bad';
  const where = [
    piece.step === null ? null : common(`step.${piece.step}`),
    piece.step === null ? null : (placeName(book, piece.equipment) ?? t('place_unknown')),
  ].filter((word) => word !== null);
  return (
    <>
      <span className={css.number}>{piece.number ?? '–'}</span>
      <span>
        {piece.standing === 'do_not_serve' ? (
          <Blocked view={view} piece={piece.number} />
        ) : piece.end === null ? (
          where.join(', ')
        ) : (
          [
            t('gone', { time: timeSaid(piece.end.at, at) }),
            t(`gone_reason.${goneReason(piece.end.reason)}`),
            piece.end.amount,
          ]
            .filter((word) => word !== null)
            .join(', ')
        )}
        {piece.standing === 'do_not_serve' ? <span className={css.note}>{where.join(', ')}</span> : null}
        {piece.number !== null && piece.number === batch.watchPiece ? (
          <span className={css.note}>
            <b>{t('watch', { number: piece.number })}</b>
          </span>
        ) : null}
        <span className={css.note}>
          {look === null ? t('no_look') : t('last_look', { time: timeSaid(look.at, at) })}
          {look?.spot ? `, ${common(`spot.${look.spot}`)}` : ''}
        </span>
      </span>
      {look === null ? null : (
        <Cell typed={look.typed} unit={look.unit} dress={look.suspect ? 'wavy' : bad ? 'cut' : 'solid'} />
      )}
    </>
  );
}

function Blocked({ view, piece }: { view: BatchView; piece: number | null }) {
  const t = useTranslations('batch');
  const about = view.book.deviations.find(
    (each) =>
      each.state !== 'closed' &&
      each.ends.some((end) => end.batch === view.batch.id && end.piece === piece && end.end === null),
  );
  return about === undefined ? (
    <b>{t('do_not_serve')}</b>
  ) : (
    <Link href={`/deviation/${encodeURIComponent(about.ref)}`} className={css.blocked} prefetch={false}>
      <b>{t('do_not_serve')}</b>
    </Link>
  );
}

const reasons = ['sold', 'discarded', 'used_up', 'delivered', 'other'] as const;
const goneReason = (reason: string): (typeof reasons)[number] =>
  reasons.find((each) => each === reason) ?? 'other';
