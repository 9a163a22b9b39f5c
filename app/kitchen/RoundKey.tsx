import { useTranslations } from 'next-intl';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { type KitchenView, timeOf } from './view.ts';

/** Starts the round, and says when it is due: "due 4:38, at latest 4:58". Without food it starts a batch. */
export function RoundKey({ view }: { view: KitchenView }) {
  const t = useTranslations('kitchen');
  const { round, rows } = view.now;
  if (rows.every((row) => row.groups.length === 0))
    return (
      <KeyLink kind="save" href="/batch/new">
        {t('first_batch')}
      </KeyLink>
    );
  const sub =
    round === null
      ? t('round_none')
      : t('round_due', { due: timeOf(view, round.dueAt), latest: timeOf(view, round.latestAt) });
  return (
    <KeyLink kind="save" href="/round" sub={sub} prefetch={false}>
      {t('start_round')}
    </KeyLink>
  );
}
