import { useTranslations } from 'next-intl';
import type { BatchView } from '#app/batch/view.ts';
import { Slip } from '#app/ui/Slip.tsx';
import type { JudgedRun } from '#lib/fold/book.ts';
import { isEarlyMiss, useForecastSaid } from './forecast-said.ts';
import { outlookOf } from './outlook-of.ts';
import { siteOf } from './said.ts';

/** Said at the top of the page while there is still time: this cooling will probably not make it. */
export function CoolingWarning({ view, run }: { view: BatchView; run: JudgedRun }) {
  const t = useTranslations('science.cooling');
  const found = run.step === 'cooling' ? outlookOf(view.book, run) : null;
  const bad = found?.targets.filter(
    ({ standing }) => standing === 'probably_misses' || standing === 'may_miss',
  );
  const said = useForecastSaid(siteOf(view));
  if (found === null || bad === undefined || bad.length === 0) return null;
  return (
    <Slip kind="note" bar title={bad.map((target) => said.warning(target)).join(' ')}>
      {isEarlyMiss(found, view.book.asOf) ? <span>{t('early')}</span> : null}
    </Slip>
  );
}
