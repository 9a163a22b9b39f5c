import { useTranslations } from 'next-intl';
import type { JudgedRun } from '#lib/fold/book.ts';
import type { Marked } from '#lib/fold/marked.ts';
import css from './batch.module.css';
import { dayWords } from './said.ts';

/** From which day a date mark is counted, the days in the freezer, and its last day: piece by piece where they differ. */
export function MarkedDays({ locale, run }: { locale: string; run: JudgedRun }) {
  const say = useMarkWords(locale);
  const each = (run.marked ?? []).map(({ piece, marked }) => {
    const own = run.byPiece.find((one) => one.piece === piece)?.stages.date_mark ?? run.stages.date_mark;
    return { piece, words: say(marked, own?.last_day ?? null) };
  });
  const all = new Set(each.map(({ words }) => words));
  const [first] = each;
  if (first === undefined) return null;
  if (all.size === 1) return <p className={css.note}>{first.words}</p>;
  return (
    <ul>
      {each.map(({ piece, words }) => (
        <li key={piece} className={css.note}>
          {piece}: {words}
        </li>
      ))}
    </ul>
  );
}

function useMarkWords(locale: string): (marked: Marked, lastDay: string | null) => string {
  const t = useTranslations('batch.mark');
  const day = (text: string): string => dayWords(text, locale);
  return ({ earliest, latest, frozen, outside }, lastDay) => {
    if (outside !== null) return t(outside);
    const from =
      earliest !== null && earliest === latest
        ? t('day_one', { day: day(earliest) })
        : earliest !== null && latest !== null
          ? t('day_one_between', { from: day(earliest), to: day(latest) })
          : latest !== null
            ? t('day_one_latest', { day: day(latest) })
            : t('day_one_unknown');
    const ice = frozen.map(([into, out]) =>
      out === null ? t('frozen_since', { from: day(into) }) : t('frozen', { from: day(into), to: day(out) }),
    );
    const until =
      lastDay === null ? [] : [t(earliest === null ? 'last_at_most' : 'last', { day: day(lastDay) })];
    return [from, ...ice, ...until].join(' ');
  };
}
