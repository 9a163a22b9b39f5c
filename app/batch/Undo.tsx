'use client'; // one key that writes
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useEffect, useState } from 'react';
import { useSite } from '#app/client/InSite.tsx';
import { useWrite } from '#app/client/useWrite.ts';
import { useOutbox } from '#app/outbox/useOutbox.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import { strike } from './correction.ts';

/**
 * What was just written, where it is now, and the way back: the entries are taken back, and stay readable. On a
 * phone without network the way back is kept beside them, and goes to the book after them.
 */
export function Undo({ by, entries, batch }: { by: string; entries: string[]; batch: string }) {
  const t = useTranslations('batch');
  const common = useTranslations('common');
  const router = useRouter();
  const { write, busy, errors, attempt } = useWrite(by);
  const place = usePlace(entries);
  if (place === null) return null;
  const undo = async () => {
    const written = await write(entries.map((id) => strike(id, t('undo_reason'))));
    if (written === null) return;
    router.replace(`/batch/${batch}?undone=1`);
    router.refresh();
  };
  return (
    <Slip kind="note" bar title={t(place === 'phone' ? 'wrote_here' : 'wrote')}>
      <Key onClick={() => void undo()} cannot={busy ? common('saving') : null}>
        {t('undo')}
      </Key>
      <ErrorSummary errors={errors} attempt={attempt} />
    </Slip>
  );
}

/** Where these entries are; null until this phone's store has said what it holds. */
function usePlace(entries: readonly string[]): 'phone' | 'book' | null {
  const { now, outbox } = useOutbox(useSite());
  const [known, setKnown] = useState(false);
  useEffect(() => {
    void outbox?.ready.then(() => setKnown(true));
  }, [outbox]);
  if (!known) return null;
  return now.held.some(({ draft }) => entries.includes(draft.id)) ? 'phone' : 'book';
}
