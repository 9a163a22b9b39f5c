import { useTranslations } from 'next-intl';
import { MarkedDays } from '#app/batch/MarkedDays.tsx';
import { margin } from '#app/batch/margin.ts';
import { temperature, timeSaid } from '#app/batch/said.ts';
import { placeName, sides } from '#app/batch/view.ts';
import { Cell } from '#app/ui/Cell.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Mark } from '#app/ui/Mark.tsx';
import { Section } from '#app/ui/Section.tsx';
import { Verdict } from '#app/ui/Verdict.tsx';
import type { Look, Piece } from '#lib/fold/book.ts';
import type { Stage, StageName } from '#lib/judge/answer.ts';
import { degrees } from '#shared/units.ts';
import css from './deviation.module.css';
import { foundLooks } from './found-looks.ts';
import type { DeviationView } from './view.ts';

/** Step 2: each piece of the group, what was read there around the finding, and where it is now. */
export function Found({ view }: { view: DeviationView }) {
  const t = useTranslations('deviation');
  const { deviation, batch } = view;
  return (
    <>
      <Limit view={view} />
      {deviation.stage === 'date_mark' && view.run !== null ? (
        <MarkedDays locale={view.locale} run={view.run} />
      ) : null}
      {deviation.entry === null ? null : <p>{deviation.entry.body.text}</p>}
      <ul>
        {piecesOf(view).map((piece) => (
          <li key={piece.number ?? 0} className={css.piece}>
            <Row view={view} piece={piece} />
          </li>
        ))}
      </ul>
      {batch === null || !batch.open ? null : (
        <KeyLink href={`/round?batch=${batch.id}&only=1`}>{t('read_every')}</KeyLink>
      )}
    </>
  );
}

/** The pieces of the group in which it was found, the concerned ones first. */
export function piecesOf({ batch, run, deviation }: DeviationView): Piece[] {
  if (batch === null) return [];
  const concerned = (piece: Piece): boolean =>
    deviation.ends.some((end) => (end.batch ?? batch.id) === batch.id && end.piece === piece.number);
  const beside = (piece: Piece): boolean =>
    run?.members.some(
      ({ piece: number, from, until }) =>
        number === piece.number &&
        from <= deviation.foundAt &&
        (until === null || until >= deviation.foundAt),
    ) ?? false;
  return [
    ...batch.pieces.filter(concerned),
    ...batch.pieces.filter((piece) => !concerned(piece) && beside(piece)),
  ];
}

function Limit({ view }: { view: DeviationView }) {
  const t = useTranslations('deviation');
  const batchWords = useTranslations('batch');
  const { deviation } = view;
  const limit = limitOf(view);
  const said = deviation.entry?.body.limit ?? null;
  const words =
    limit !== null
      ? `${temperature(limit.value, limit.unit)} ${batchWords(`comparison.${limit.comparison}`)}`
      : said !== null && said.value !== null && said.unit !== null
        ? temperature(said.value, said.unit)
        : null;
  return (
    <p>
      <b>{t('limit')}:</b> {words ?? t('limit_none')}{' '}
      {deviation.section === null ? null : <Section>{deviation.section}</Section>}
    </p>
  );
}

/** The stage that this deviation is about, of one piece or of the group. */
export function stageOf({ run, deviation }: DeviationView, piece?: number | null): Stage | null {
  if (run === null) return null;
  const stages =
    piece === undefined ? run.stages : (run.byPiece.find((each) => each.piece === piece)?.stages ?? null);
  if (stages === null) return null;
  const name = (deviation.stage ?? 'at_readings') as StageName;
  return stages[name] ?? null;
}

const limitOf = (view: DeviationView) => stageOf(view)?.limit ?? null;

function Row({ view, piece }: { view: DeviationView; piece: Piece }) {
  const t = useTranslations('deviation');
  const common = useTranslations('common');
  const { run, deviation, book } = view;
  const { looks, before } = foundLooks(run?.looks ?? [], piece.number, deviation.foundAt);
  const stage = stageOf(view, piece.number);
  const side = run === null ? new Map() : sides(book, [run]);
  const place = placeName(book, piece.equipment) ?? t('where_unknown');
  // A date is past whatever its temperature was: the verdict stands without a look.
  const isDated = deviation.stage === 'date_mark';
  const where = piece.end === null ? place : t('where_gone', { time: timeSaid(piece.end.at, view) });
  return (
    <>
      <span className={css.number}>{piece.number ?? '–'}</span>
      <span>
        {(looks.length > 0 || isDated) && stage !== null ? (
          <Verdict verdict={stage.verdict} />
        ) : (
          <span className={css.strong}>
            <Mark word="could_not" />{' '}
            {before === null ? t('never') : t('nobody_since', { time: timeSaid(before.at, view) })}
          </span>
        )}
        <span className={css.note}>
          {isDated ? null : <AtLook view={view} stage={stage} looks={looks} />}
        </span>
        <span className={css.note}>
          {where}
          {piece.standing === 'do_not_serve' ? (
            <>
              , <b>{t('blocked')}</b>
            </>
          ) : null}
        </span>
      </span>
      <span className={css.figures}>
        {looks.map((look) => (
          <span key={look.id}>
            <Cell
              typed={look.typed}
              unit={look.unit}
              dress={look.suspect ? 'wavy' : side.get(look.id) === 'bad' ? 'cut' : 'solid'}
            />
            <small>{look.spot === null ? '' : common(`spot.${look.spot}`)}</small>
          </span>
        ))}
      </span>
    </>
  );
}

function AtLook({ view, stage, looks }: { view: DeviationView; stage: Stage | null; looks: Look[] }) {
  const t = useTranslations('deviation');
  const [first] = looks;
  if (first === undefined || view.run === null) return '';
  const off = stage === null ? null : margin({ looks, step: view.run.step }, stage);
  const time = timeSaid(first.at, view);
  if (off === null || off.value >= 0) return t('at_look_kept', { time });
  const side = stage?.limit?.comparison === 'at_or_below' ? 'over' : 'under';
  return t('at_look', { time, degrees: `${Math.abs(off.value)} ${degrees(off.unit)}`, side });
}
