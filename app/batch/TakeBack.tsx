'use client'; // one key that writes
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useWrite } from '#app/client/useWrite.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { Key } from '#app/ui/Key.tsx';
import { strike } from './correction.ts';

type Props = { by: string; batch: string; entry: string; words: string };

/** Takes one of two entries back that say otherwise about the same food: a new entry, the old one stays readable. */
export function TakeBack({ by, batch, entry, words }: Props) {
  const t = useTranslations('batch');
  const common = useTranslations('common');
  const router = useRouter();
  const { write, busy, errors, attempt } = useWrite(by);
  const takeBack = async () => {
    if ((await write([strike(entry, t('conflict.reason'))])) === null) return;
    router.replace(`/batch/${batch}?undone=1`);
    router.refresh();
  };
  return (
    <>
      <Key onClick={() => void takeBack()} cannot={busy ? common('saving') : null}>
        {words}
      </Key>
      <ErrorSummary errors={errors} attempt={attempt} />
    </>
  );
}
