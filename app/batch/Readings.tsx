import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { countedAs } from '#app/batch/counted.ts';
import { Cell } from '#app/ui/Cell.tsx';
import type { Dress } from '#app/ui/Figure.tsx';
import { Hand } from '#app/ui/Ruled.tsx';
import { initialsOf } from '#lib/fold/ask.ts';
import { clockWords } from '#shared/clock-off.ts';
import { type ReadingRow, readingRows } from './reading-rows.ts';
import css from './readings.module.css';
import { timeSaid } from './said.ts';
import { type BatchView, placeName } from './view.ts';

const columns = ['time', 'hand', 'piece', 'spot', 'figure', 'probe', 'word', 'correct'] as const;

const shownAtOnce = 16; // about a screen of the ledger; the rest is one tap away

type Props = { view: BatchView; clocksOff: ReadonlyMap<string, number> };

/** Every reading, newest first: the chart in figures. What was struck or corrected stays readable. */
export function Readings({ view, clocksOff }: Props) {
  const t = useTranslations('batch');
  const rows = readingRows(view.book, view.batch);
  const food = rows.filter(({ air }) => !air);
  const air = rows.filter((row) => row.air);
  const older = food.slice(shownAtOnce);
  if (rows.length === 0) return <p className={css.empty}>{t('readings_none')}</p>;
  return (
    <section className={css.readings}>
      <h2>{t('readings')}</h2>
      <Table view={view} clocksOff={clocksOff} rows={food.slice(0, shownAtOnce)} />
      {older.length === 0 ? null : (
        <details>
          <summary>{t('readings_older', { count: older.length })}</summary>
          <Table view={view} clocksOff={clocksOff} rows={older} />
        </details>
      )}
      {air.length === 0 ? null : (
        <details>
          <summary>{t('readings_air_all', { count: air.length })}</summary>
          <Table view={view} clocksOff={clocksOff} rows={air} />
        </details>
      )}
    </section>
  );
}

function Table({ view, clocksOff, rows }: Props & { rows: readonly ReadingRow[] }) {
  const t = useTranslations('batch');
  return (
    <table>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col" className={css[column]}>
              {t(`column.${column}`)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Row key={row.id} view={view} row={row} offMs={clocksOff.get(row.id) ?? null} />
        ))}
      </tbody>
    </table>
  );
}

type RowProps = { view: BatchView; row: ReadingRow; offMs: number | null };

function Row({ view, row, offMs }: RowProps) {
  const t = useTranslations('batch');
  const common = useTranslations('common');
  const { book } = view;
  const time = timeSaid(row.at, { ...view, now: book.asOf });
  const probe = row.probe === null ? undefined : book.kitchen.probes.get(row.probe);
  return (
    <tr>
      <td className={css.time}>{time}</td>
      <td className={css.hand}>
        <Hand initials={initialsOf(book, row.by)} />
      </td>
      <td className={css.piece}>
        {row.piece === null ? '' : common('piece', { number: row.piece, counted: countedAs(view.batch) })}
      </td>
      <td className={css.spot}>
        {row.air
          ? t('readings_air', { place: placeName(book, row.equipment) ?? '' })
          : row.spot === null
            ? ''
            : common(`spot.${row.spot}`)}
      </td>
      <td className={css.figure}>
        {row.was.map((was) => (
          <span key={was}>
            <Cell typed={was} unit={row.unit} dress="struck" />{' '}
          </span>
        ))}
        <Cell typed={row.typed} unit={row.unit} dress={dressOf(row)} />
      </td>
      <td className={css.probe}>
        {probe === undefined ? '' : probeSaid(probe.name, common(`colour.${probe.colour}`))}
      </td>
      <td className={css.word}>
        <Remarks view={view} row={row} offMs={offMs} />
      </td>
      <td className={css.correct}>
        {row.struck || view.by === '' ? null : (
          <Link
            href={`/batch/${view.batch.id}/correct/${row.id}`}
            prefetch={false}
            aria-label={t('correct_of', { figure: row.typed, time })}
          >
            {t('correct')}
          </Link>
        )}
      </td>
    </tr>
  );
}

function Remarks({ view, row, offMs }: RowProps) {
  const t = useTranslations('batch');
  const { book } = view;
  const at = { ...view, now: book.asOf };
  const words = [
    row.struck ? t('struck_word') : null,
    row.late ? `${t('late_word')}: ${t('late', { time: timeSaid(row.enteredAt, at) })}` : null,
    offMs === null ? null : t('clock_off', clockWords(offMs)),
    row.suspect ? t('suspect_word') : null,
    row.odd ? t('odd_word') : null,
    row.heldS === null ? null : t('stayed', { seconds: row.heldS }),
    ...row.amendments.map((each) =>
      [
        each.field === 'value' || each.field === 'struck' ? null : t('was', { from: each.from || '–' }),
        t('corrected', {
          hand: initialsOf(book, each.by),
          time: timeSaid(each.at, at),
          reason: each.reason,
        }),
      ]
        .filter((word) => word !== null)
        .join(', '),
    ),
  ].filter((word) => word !== null);
  return words.join('; ');
}

/** A thermometer's colour is always a word; one that is called by its colour says it once. */
const probeSaid = (name: string, colour: string): string =>
  name.toLowerCase().includes(colour.toLowerCase()) ? name : `${name}, ${colour}`;

function dressOf(row: ReadingRow): Dress {
  if (row.struck) return 'struck';
  if (row.suspect) return 'wavy';
  return row.side === 'bad' ? 'cut' : 'solid';
}
