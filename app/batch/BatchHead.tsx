import { useTranslations } from 'next-intl';
import { Figure } from '#app/ui/Figure.tsx';
import { presentPieces } from '#lib/fold/ask.ts';
import type { JudgedRun } from '#lib/fold/book.ts';
import { worstIsWarm } from '#lib/fold/pieces.ts';
import css from './batch.module.css';
import { countedAs } from './counted.ts';
import { latestWorst } from './latest.ts';
import { timeSaid } from './said.ts';
import { type BatchView, foodSaid, placeName, sides } from './view.ts';

/** The name, what is where, and the lowest figure (the warmest, where cold is asked for). */
export function BatchHead({ view, run }: { view: BatchView; run: JudgedRun | null }) {
  const t = useTranslations('batch');
  const { book, batch } = view;
  const at = { ...view, now: book.asOf };
  const food = foodSaid(batch.food, view.locale);
  const present = batch.runs.filter((each) => each.end === null);
  return (
    <header className={css.head}>
      <div>
        <h1>{food === '' ? batch.name : `${food}, ${batch.name}`}</h1>
        {present.map((each) => (
          <p key={each.key}>
            <PiecesIn view={view} run={each} />
          </p>
        ))}
        {batch.open ? null : <p>{t('gone_all', { time: timeSaid(lastGone(view), at) })}</p>}
        {batch.watchPiece === null || batch.count === null ? null : (
          <p className={css.note}>
            {t('watch', { number: batch.watchPiece })} ({t('watch_print', { count: batch.count })})
          </p>
        )}
      </div>
      <LowestFigure view={view} run={run} />
    </header>
  );
}

function PiecesIn({ view, run }: { view: BatchView; run: JudgedRun }) {
  const t = useTranslations('batch');
  const common = useTranslations('common');
  const { book } = view;
  const pieces = presentPieces(run);
  const many =
    pieces === null
      ? t('not_counted')
      : common('pieces', { count: pieces.length, counted: countedAs(view.batch) });
  const place = placeName(book, run.equipment);
  const where = place === null ? `${many}, ${t('place_unknown')}` : t('place', { pieces: many, place });
  const since = t('step_since', {
    step: common(`step.${run.step}`),
    time: timeSaid(run.start, { ...view, now: book.asOf }),
  });
  return `${where}. ${since}`;
}

function LowestFigure({ view, run }: { view: BatchView; run: JudgedRun | null }) {
  const t = useTranslations('batch');
  const common = useTranslations('common');
  const look = run === null ? null : latestWorst(run);
  if (run === null || look === null) return <p className={css.note}>{t('never_read')}</p>;
  const bad = sides(view.book, [run]).get(look.id) === 'bad';
  const time = timeSaid(look.at, { ...view, now: view.book.asOf });
  return (
    <div className={css.lowest}>
      <Figure
        typed={look.typed}
        unit={look.unit}
        size="batch"
        dress={bad ? 'cut' : look.suspect ? 'wavy' : 'solid'}
      />
      <p className={css.note}>
        {t(worstIsWarm(run.step) ? 'warmest' : 'lowest', { time })}
        {look.piece === null
          ? ''
          : `, ${common('piece', { number: look.piece, counted: countedAs(view.batch) })}`}
      </p>
    </div>
  );
}

const lastGone = ({ batch }: BatchView): number =>
  Math.max(batch.at, ...batch.pieces.map(({ end }) => end?.at ?? 0));
