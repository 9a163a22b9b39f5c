import { useTranslations } from 'next-intl';
import { countedAs } from '#app/batch/counted.ts';
import { timeSaid } from '#app/batch/said.ts';
import { Mark } from '#app/ui/Mark.tsx';
import { initialsOf } from '#lib/fold/ask.ts';
import type { Deviation } from '#lib/fold/book.ts';
import { msOf } from '#shared/time.ts';
import { Confirm } from './Confirm.tsx';
import css from './deviation.module.css';
import { stillMissing } from './still-missing.ts';
import { type DeviationView, deciderOf } from './view.ts';

/** What became of each piece, and what is missing before the deviation closes. */
export function Became({ view }: { view: DeviationView }) {
  const t = useTranslations('deviation');
  const missing = stillMissing(view.deviation);
  const closed = view.deviation.state === 'closed' ? <p className={css.strong}>{t('closed_says')}</p> : null;
  return (
    <div className={css.part}>
      <h3>{t('ends')}</h3>
      <ul className={css.list}>
        {view.deviation.ends.map((end) => (
          <li key={`${end.batch} ${end.piece}`}>
            <End view={view} end={end} />
          </li>
        ))}
      </ul>
      {missing.length === 0 ? (
        closed
      ) : (
        <>
          {closed}
          <h3>{t('missing.title')}</h3>
          <ul className={css.list}>
            {missing.map((each) => (
              <li key={each}>{t(`missing.${each}`)}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

function End({ view, end }: { view: DeviationView; end: Deviation['ends'][number] }) {
  const t = useTranslations('deviation');
  const { book, deviation } = view;
  const piece =
    end.piece === null
      ? t('piece_all')
      : t('piece', {
          number: end.piece,
          counted: countedAs(book.batches.get(end.batch ?? deviation.batch ?? '')),
        });
  const other = end.batch !== null && end.batch !== deviation.batch ? book.batches.get(end.batch) : undefined;
  const time = end.at === null ? '–' : timeSaid(end.at, view);
  const became = t(`end.${end.end ?? 'none'}`, { time });
  const words =
    end.end === null || end.at === null || end.end === 'gone'
      ? became
      : t('end_by', { end: became, time, hand: end.by === null ? '–' : initialsOf(book, end.by) });
  return (
    <>
      <b>{piece}</b>
      {other === undefined ? '' : ` (${t('made_since', { name: other.name })})`}:{' '}
      {end.end === null ? <b>{words}</b> : words}
    </>
  );
}

/** Every action and decision, in order: what, which pieces, who decided and how, in the words that were written. */
export function History({ view }: { view: DeviationView }) {
  const t = useTranslations('deviation');
  const { deviation, book } = view;
  const all = [...deviation.actions, ...deviation.decisions].sort(
    (a, b) => msOf(a.at) - msOf(b.at) || a.seq - b.seq,
  );
  return (
    <div className={css.part}>
      <h3>{t('history')}</h3>
      {all.length === 0 ? <p className={css.soft}>{t('history_empty')}</p> : null}
      <ul className={css.list}>
        {all.map((entry) => (
          <li key={entry.id}>
            <b>
              {timeSaid(msOf(entry.at), view)}{' '}
              {entry.kind === 'decision'
                ? t(`decision.${entry.body.decision}`)
                : t(`action.${entry.body.action}`)}
            </b>
            {entry.body.pieces === null
              ? ''
              : `, ${entry.body.pieces.map((number) => t('piece', { number, counted: countedAs(view.batch) })).join(', ')}`}
            <span className={css.note}>
              {' '}
              {t(`via.${entry.body.decided_via}`, {
                name: book.kitchen.people.get(entry.body.decided_by)?.name ?? '–',
              })}
              , {initialsOf(book, entry.by)}
            </span>
            <Said entry={entry} />
            {deviation.unconfirmed.includes(entry.id) ? (
              <Unconfirmed view={view} entry={entry.id} maker={entry.body.decided_by} />
            ) : null}
          </li>
        ))}
      </ul>
    </div>
  );
}

type Written = Deviation['actions'][number] | Deviation['decisions'][number];

/** The words as they were written: never translated, never shortened. */
function Said({ entry }: { entry: Written }) {
  const t = useTranslations('deviation');
  const words =
    entry.kind === 'decision'
      ? [entry.body.reason]
      : [
          entry.body.decided_words,
          entry.body.condition,
          entry.body.disposition,
          entry.body.amount,
          entry.body.cause === null || entry.body.cause === ''
            ? null
            : t('cause_written', { cause: entry.body.cause }),
          entry.body.text,
        ];
  const said = words.filter((word): word is string => word !== null && word !== '');
  const lang = entry.kind === 'decision' ? undefined : entry.body.lang;
  return said.length === 0 ? null : (
    <p className={css.note} lang={lang}>
      {said.join(' · ')}
    </p>
  );
}

function Unconfirmed({ view, entry, maker }: { view: DeviationView; entry: string; maker: string }) {
  const t = useTranslations('deviation');
  const person = deciderOf(view.book, maker);
  return (
    <>
      <p className={css.note}>
        <Mark word="open" /> {t('unconfirmed')}
      </p>
      {person === null || view.by === '' ? null : (
        <Confirm deviation={view.deviation.ref} entry={entry} person={person} />
      )}
    </>
  );
}
