import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { ProofLine } from '#app/ui/ProofLine.tsx';
import type { JudgedRun } from '#lib/fold/book.ts';
import { lineOf } from '#lib/fold/line.ts';
import css from './batch.module.css';
import { timeSaid } from './said.ts';
import { type BatchView, placeName } from './view.ts';

/** Every step of the batch with its own line; a tap shows its readings in the chart above. */
export function Runs({ view, shown }: { view: BatchView; shown: string | null }) {
  const t = useTranslations('batch');
  if (view.batch.runs.length < 2) return null;
  return (
    <section className={css.runs}>
      <h2>{t('runs')}</h2>
      <ul>
        {view.batch.runs.map((run) => (
          <li key={run.key}>
            <Link
              href={`/batch/${view.batch.id}?run=${run.key}`}
              prefetch={false}
              className={css.run}
              {...(run.key === shown ? { 'aria-current': true as const } : {})}
            >
              <RunWords view={view} run={run} />
              <ProofLine
                line={lineOf(view.book, run)}
                zone={view.zone}
                clock={view.clock}
                width={240}
                height={10}
              />
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}

function RunWords({ view, run }: { view: BatchView; run: JudgedRun }) {
  const common = useTranslations('common');
  const at = { ...view, now: view.book.asOf };
  const place = placeName(view.book, run.equipment);
  const pieces = run.pieces === null || run.pieces.length === view.batch.count ? null : run.pieces.join(', ');
  return (
    <span>
      <b>{common(`step.${run.step}`)}</b>
      <span className={css.note}>
        {[place, pieces, `${timeSaid(run.start, at)} – ${run.end === null ? '' : timeSaid(run.end, at)}`]
          .filter((word) => word !== null)
          .join(' · ')}
      </span>
    </span>
  );
}
