import { useTranslations } from 'next-intl';
import { StretchWord } from '#app/ui/StretchWord.tsx';
import { Sum, type SumRow } from '#app/ui/Sum.tsx';
import type { Line } from '#lib/fold/views.ts';
import css from './batch.module.css';
import { length, type Say, timeSaid } from './said.ts';
import type { BatchView } from './view.ts';

/** How long it was looked at in time, how long nobody looked, and how long it was out: never added up. */
export function BatchSums({ view, line }: { view: BatchView; line: Line }) {
  const t = useTranslations('batch.sum');
  const say = useTranslations('common') as unknown as Say;
  const known = line.underShortestMin !== null;
  const last = line.looks.at(-1);
  const rows: SumRow[] = [
    { words: <StretchWord kind="seen" />, figure: length(say, line.seenMin) },
    { words: <StretchWord kind="nobody_looked" />, figure: length(say, line.nobodyLookedMin, 'up') },
  ];
  if (known) {
    rows.push({
      words: <StretchWord kind={line.side === 'over' ? 'over' : 'under'} />,
      figure: t('at_least', { length: length(say, line.underShortestMin ?? 0) }),
    });
    rows.push({
      words: '',
      figure:
        line.underLongestMin === null
          ? t('not_known')
          : t('at_most', { length: length(say, line.underLongestMin, 'up') }),
    });
  }
  return (
    <>
      <Sum rows={rows} />
      {last && line.now !== null ? (
        <p className={css.toLast}>
          {t('to_last', { time: timeSaid(last.at, { ...view, now: view.book.asOf }) })}
        </p>
      ) : null}
    </>
  );
}
