import { getLocale, getTranslations } from 'next-intl/server';
import { Actions } from '#app/batch/Actions.tsx';
import { BatchChart, type ChartLimit } from '#app/batch/BatchChart.tsx';
import { BatchHead } from '#app/batch/BatchHead.tsx';
import { BatchSums } from '#app/batch/BatchSums.tsx';
import { latestWorst } from '#app/batch/latest.ts';
import { Missing } from '#app/batch/Missing.tsx';
import { nextItems } from '#app/batch/next-items.ts';
import { PieceList } from '#app/batch/PieceList.tsx';
import { Readings } from '#app/batch/Readings.tsx';
import { RuleRows } from '#app/batch/RuleRows.tsx';
import { Runs } from '#app/batch/Runs.tsx';
import { temperature, timeSaid } from '#app/batch/said.ts';
import { Undo } from '#app/batch/Undo.tsx';
import { type BatchView, shownRun } from '#app/batch/view.ts';
import { loadBook } from '#app/server/book.ts';
import { entrance } from '#app/server/session.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import { TheNext } from '#app/ui/TheNext.tsx';
import { Words } from '#app/ui/Words.tsx';
import type { JudgedRun } from '#lib/fold/book.ts';
import { lineOf } from '#lib/fold/line.ts';
import { wallClock } from '#shared/time.ts';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('batch');
  return { title: t('title') };
}

type Props = {
  params: Promise<{ id: string }>;
  searchParams: Promise<{ run?: string; wrote?: string; made?: string; undone?: string }>;
};

/** One batch: what is next, the lowest figure, the chart, the rules, the pieces, every reading. */
export default async function BatchPage({ params, searchParams }: Props) {
  const session = await entrance();
  const [{ id }, asked, book] = await Promise.all([params, searchParams, loadBook(session)]);
  const t = await getTranslations('batch');
  const common = await getTranslations('common');
  const batch = book.batches.get(id);
  if (batch === undefined) return <Missing />;
  const view: BatchView = {
    book,
    batch,
    zone: book.kitchen.site?.zone ?? 'UTC',
    clock: book.kitchen.site?.clock ?? '24',
    locale: (await getLocale()) === 'es' ? 'es' : 'en',
    by: session.hand ?? '',
  };
  const run = shownRun(batch, asked.run);
  const line = run === null ? null : lineOf(book, run);
  const at = { ...view, now: book.asOf };
  return (
    <Sheet width="batch">
      <Headband
        back={{ href: '/', words: common('kitchen_now') }}
        clock={wallClock(book.asOf, view.zone, view.clock)}
      />
      {asked.wrote && view.by !== '' ? (
        <Words names={['batch', 'problem', 'remedy']}>
          <Undo by={view.by} batch={id} entries={asked.wrote.split(',').slice(0, 50)} />
        </Words>
      ) : null}
      {asked.undone ? <Slip kind="note" bar title={t('undone')} /> : null}
      {asked.made ? (
        <Slip kind="note" bar title={t('created', { name: batch.name })}>
          <span>{t('read_each_help')}</span>
          <KeyLink href={`/round?batch=${id}&only=1`} kind="save" wide>
            {t('read_each')}
          </KeyLink>
        </Slip>
      ) : null}
      <TheNext
        items={nextItems(book, batch).map((item) => ({
          words: t(`todo.${item.key}`),
          href: item.href,
          ...(item.by === null
            ? {}
            : byWhen(wallClock(item.by, view.zone, view.clock), timeSaid(item.by, at))),
        }))}
      />
      <BatchHead view={view} run={run} />
      {run === null || line === null ? null : (
        <>
          <BatchChart
            line={line}
            limits={limitsOf(run)}
            drawn={drawnPiece(run)}
            zone={view.zone}
            clock={view.clock}
            label={t('chart_says', {
              name: batch.name,
              step: common(`step.${run.step}`),
              from: timeSaid(line.from, at),
              to: timeSaid(line.to, at),
            })}
          />
          <BatchSums view={view} line={line} />
        </>
      )}
      <RuleRows view={view} />
      <PieceList view={view} />
      <Actions view={view} />
      <Runs view={view} shown={run?.key ?? null} />
      <Readings view={view} />
    </Sheet>
  );
}

/** The clock time large; of another day, with its date beside the words. */
const byWhen = (time: string, full: string) => (full === time ? { by: time } : { by: time, note: full });

/** The figures that the step's rules ask for, each once. */
function limitsOf(run: JudgedRun): ChartLimit[] {
  const found = new Map<number, ChartLimit>();
  for (const stage of Object.values(run.stages))
    if (stage.limit !== null && !found.has(stage.limit.value))
      found.set(stage.limit.value, {
        value: stage.limit.value,
        words: temperature(stage.limit.value, stage.limit.unit),
        section: stage.section,
      });
  return [...found.values()];
}

/** The piece whose readings are linked: the one with the worst figure at its last look. */
const drawnPiece = (run: JudgedRun): number | null => latestWorst(run)?.piece ?? null;
