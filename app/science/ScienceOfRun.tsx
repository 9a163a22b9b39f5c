import { useTranslations } from 'next-intl';
import type { BatchView } from '#app/batch/view.ts';
import type { JudgedRun } from '#lib/fold/book.ts';
import { CoolingForecast } from './CoolingForecast.tsx';
import { HoldLevels } from './HoldLevels.tsx';
import { RestSection } from './RestSection.tsx';
import css from './science.module.css';
import { WithoutPowerSection } from './WithoutPowerSection.tsx';

/** What the record of a run bounds and lets one expect, beside its rules and never in them. */
export function ScienceOfRun({ view, run }: { view: BatchView; run: JudgedRun }) {
  const t = useTranslations('science');
  const held = run.stages.at_readings?.limit?.comparison.endsWith('above') === true;
  if (!held && (run.end !== null || (run.step !== 'cooling' && run.step !== 'rest'))) return null;
  return (
    <section className={css.science}>
      <h2>{t('title')}</h2>
      <p className={css.note}>{t('no_release')}</p>
      {run.step === 'cooling' ? <CoolingForecast view={view} run={run} /> : null}
      {run.step === 'rest' ? <RestSection view={view} run={run} /> : null}
      {held ? <HoldLevels view={view} run={run} /> : null}
      {held ? <WithoutPowerSection view={view} run={run} /> : null}
    </section>
  );
}
