'use client'; // one key that writes
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useWrite } from '#app/client/useWrite.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import { strike } from './correction.ts';

/** What was just written, and the way back: the entries are taken back, and stay readable. */
export function Undo({ by, entries, batch }: { by: string; entries: string[]; batch: string }) {
  const t = useTranslations('batch');
  const router = useRouter();
  const { write, busy, errors, attempt } = useWrite(by);
  const undo = async () => {
    const written = await write(entries.map((id) => strike(id, t('undo_reason'))));
    if (written === null) return;
    router.replace(`/batch/${batch}?undone=1`);
    router.refresh();
  };
  return (
    <Slip kind="note" bar title={t('wrote')}>
      <Key onClick={() => void undo()} cannot={busy ? t('writing') : null}>
        {t('undo')}
      </Key>
      <ErrorSummary errors={errors} attempt={attempt} />
    </Slip>
  );
}
