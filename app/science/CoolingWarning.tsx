import { useTranslations } from 'next-intl';
import { temperature } from '#app/batch/said.ts';
import type { BatchView } from '#app/batch/view.ts';
import { Slip } from '#app/ui/Slip.tsx';
import type { JudgedRun } from '#lib/fold/book.ts';
import { outlookOf } from './outlook-of.ts';
import { siteOf, timeAt } from './said.ts';

const earlyMs = 30 * 60_000;

/** Said at the top of the page while there is still time: this cooling will probably not make it. */
export function CoolingWarning({ view, run }: { view: BatchView; run: JudgedRun }) {
  const t = useTranslations('science.cooling');
  const found = run.step === 'cooling' ? outlookOf(view.book, run) : null;
  const bad = found?.targets.filter(
    ({ standing }) => standing === 'probably_misses' || standing === 'may_miss',
  );
  if (found === null || bad === undefined || bad.length === 0) return null;
  const site = siteOf(view);
  const misses = bad.some(({ standing }) => standing === 'probably_misses');
  return (
    <Slip
      kind="note"
      bar
      title={bad
        .map(({ standing, limit, deadline }) =>
          t(standing === 'may_miss' ? 'standing.may_miss' : 'standing.probably_misses', {
            figure: temperature(limit.value, limit.unit),
            deadline: deadline === null ? '' : timeAt(deadline, site),
          }),
        )
        .join(' ')}
    >
      {misses && view.book.asOf - found.since <= earlyMs ? <span>{t('early')}</span> : null}
    </Slip>
  );
}
