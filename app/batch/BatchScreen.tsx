import { useTranslations } from 'next-intl';
import type { ScreenGiven } from '#app/client/screen.ts';
import { CoolingWarning } from '#app/science/CoolingWarning.tsx';
import { ScienceOfRun } from '#app/science/ScienceOfRun.tsx';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import { TheNext } from '#app/ui/TheNext.tsx';
import { profileOf } from '#lib/fold/ask.ts';
import type { JudgedRun } from '#lib/fold/book.ts';
import { lineOf } from '#lib/fold/line.ts';
import { wallClock } from '#shared/time.ts';
import { Actions } from './Actions.tsx';
import { BatchChart, type ChartLimit } from './BatchChart.tsx';
import { BatchHead } from './BatchHead.tsx';
import { BatchSums } from './BatchSums.tsx';
import css from './batch.module.css';
import { Conflicts } from './Conflicts.tsx';
import { CoolingMethods } from './CoolingMethods.tsx';
import { latestWorst } from './latest.ts';
import { Missing } from './Missing.tsx';
import { nextItems } from './next-items.ts';
import { PieceList } from './PieceList.tsx';
import { Readings } from './Readings.tsx';
import { RuleRows } from './RuleRows.tsx';
import { Runs } from './Runs.tsx';
import { temperature, timeSaid } from './said.ts';
import { stepRules } from './step-rules.ts';
import { Undo } from './Undo.tsx';
import { type BatchView, shownRun } from './view.ts';

export type BatchAsked = { run?: string; wrote?: string; made?: string; undone?: string };

/** `clocksOff`: readings of a device whose clock was off, and how far (ms); a phone without network has none. */
type Props = {
  given: ScreenGiven;
  id: string;
  asked: BatchAsked;
  clocksOff?: ReadonlyMap<string, number>;
};

const noneOff: ReadonlyMap<string, number> = new Map();

/** One batch: what is next, the lowest figure, the chart, the rules, the pieces, every reading. */
export function BatchScreen({ given, id, asked, clocksOff = noneOff }: Props) {
  const { book } = given;
  const t = useTranslations('batch');
  const common = useTranslations('common');
  const batch = book.batches.get(id);
  if (batch === undefined) return <Missing />;
  const view: BatchView = {
    book,
    batch,
    zone: book.kitchen.site?.zone ?? 'UTC',
    clock: book.kitchen.site?.clock ?? '24',
    locale: given.locale,
    by: given.hand ?? '',
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
        <Undo by={view.by} batch={id} entries={asked.wrote.split(',').slice(0, 50)} />
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
      <Conflicts view={view} />
      <TheNext
        items={nextItems(book, batch).map((item) => ({
          words: t(`todo.${item.key}`),
          href: item.href,
          ...(item.by === null
            ? {}
            : byWhen(wallClock(item.by, view.zone, view.clock), timeSaid(item.by, at))),
        }))}
      />
      {run === null ? null : <CoolingWarning view={view} run={run} />}
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
      {batch.runs.some(({ step, end }) => step === 'cooling' && end === null) ? (
        <div className={css.inset}>
          <CoolingMethods advice={stepRules(profileOf(book)).cooling} />
        </div>
      ) : null}
      {run?.step === 'cooling' ? <ScienceOfRun view={view} run={run} /> : null}
      <RuleRows view={view} />
      {run === null || run.step === 'cooling' ? null : <ScienceOfRun view={view} run={run} />}
      <PieceList view={view} />
      <Actions view={view} />
      <Runs view={view} shown={run?.key ?? null} />
      <Readings view={view} clocksOff={clocksOff} />
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
