import { useTranslations } from 'next-intl';
import { Slip } from '#app/ui/Slip.tsx';
import { initialsOf } from '#lib/fold/ask.ts';
import type { Conflict } from '#lib/fold/conflicts.ts';
import { msOf } from '#shared/time.ts';
import { timeSaid } from './said.ts';
import { TakeBack } from './TakeBack.tsx';
import { type BatchView, placeName } from './view.ts';

/** Two people wrote of the same food without knowing of each other: both entries, and a way to take back either. */
export function Conflicts({ view }: { view: BatchView }) {
  const t = useTranslations('batch.conflict');
  const conflicts = view.batch.conflicts ?? [];
  if (conflicts.length === 0) return null;
  return (
    <Slip kind="note" bar title={t('title')}>
      <p>{t('help')}</p>
      {conflicts.map((conflict) => (
        <Both key={conflict.entries.map(({ id }) => id).join()} view={view} conflict={conflict} />
      ))}
    </Slip>
  );
}

function Both({ view, conflict }: { view: BatchView; conflict: Conflict }) {
  const t = useTranslations('batch.conflict');
  const common = useTranslations('common');
  const { book, batch, by } = view;
  const at = { ...view, now: book.asOf };
  return (
    <ul>
      {conflict.entries.map((entry) => (
        <li key={entry.id}>
          <p>
            {t('line', {
              time: timeSaid(msOf(entry.at), at),
              hand: initialsOf(book, entry.by),
              step: common(`step.${entry.body.step}`),
              place: placeName(book, entry.body.equipment) ?? 'none',
              pieces: entry.body.pieces?.join(', ') ?? 'all',
              seq: entry.seq,
            })}
          </p>
          {by === '' ? null : (
            <TakeBack by={by} batch={batch.id} entry={entry.id} words={t('take_back', { seq: entry.seq })} />
          )}
        </li>
      ))}
    </ul>
  );
}
