import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { countedAs } from '#app/batch/counted.ts';
import { Section } from '#app/ui/Section.tsx';
import { Verdict } from '#app/ui/Verdict.tsx';
import { profileOf } from '#lib/fold/ask.ts';
import type { JudgedRun } from '#lib/fold/book.ts';
import { restsOn } from '#lib/fold/rests-on.ts';
import { rowsApart } from '#lib/fold/rule-rows.ts';
import type { RuleRow } from '#lib/fold/views.ts';
import { figuresOf } from '#lib/judge/explain-figures.ts';
import { figureMark } from '#lib/judge/explain-words.ts';
import { degrees } from '#shared/units.ts';
import css from './batch.module.css';
import { MarkedDays } from './MarkedDays.tsx';
import { type Margin, margin } from './margin.ts';
import proofCss from './proof.module.css';
import { length, type Say, temperature, timeSaid } from './said.ts';
import { type BatchView, placeName } from './view.ts';

/** One row a rule, worst first: what it asks, its section, the figures, why it is not shown, what to do by when. */
export function RuleRows({ view }: { view: BatchView }) {
  const t = useTranslations('batch');
  const unjudged = view.batch.runs.filter(
    (run) => run.reason !== null && Object.keys(run.stages).length === 0,
  );
  const { now, earlier } = rowsApart(view.batch);
  return (
    <section className={css.rules}>
      <h2>{t('rules')}</h2>
      <ul>
        <Rows view={view} rows={now} />
        {unjudged.map((run) => (
          <li key={run.key}>
            <div className={css.verdict}>{t('no_rule')}</div>
            <div>
              <Where view={view} step={run.step} equipment={run.equipment} start={run.start} />
              <p className={css.note}>{t(`no_rule_why.${run.reason ?? 'no_figure'}`)}</p>
            </div>
          </li>
        ))}
      </ul>
      {earlier.length === 0 ? null : (
        <details className={css.earlier}>
          <summary>{t('kept_earlier', { count: earlier.length })}</summary>
          <ul>
            <Rows view={view} rows={earlier} />
          </ul>
        </details>
      )}
    </section>
  );
}

const Rows = ({ view, rows }: { view: BatchView; rows: readonly RuleRow[] }) =>
  rows.map((row) => (
    <li key={`${row.run} ${row.stage}`}>
      <Row view={view} row={row} />
    </li>
  ));

function Row({ view, row }: { view: BatchView; row: RuleRow }) {
  const t = useTranslations('batch');
  const { judged } = row;
  const run = view.batch.runs.find(({ key }) => key === row.run);
  const holds =
    row.stage === 'at_readings' ||
    row.stage === 'between_readings' ||
    row.stage === 'house_plan_interval' ||
    row.stage === 'date_mark';
  return (
    <>
      <div className={css.verdict}>
        <Verdict verdict={judged.verdict} soFar={judged.open && judged.verdict === 'kept' && holds} />
      </div>
      <div>
        <p>
          <Asks row={row} days={profileOf(view.book)?.figures.date_mark?.days.days ?? 0} />{' '}
          <Section>{judged.section}</Section>
        </p>
        {run === undefined ? null : (
          <Where
            view={view}
            step={run.step}
            equipment={run.equipment}
            start={run.start}
            pieces={row.pieces}
          />
        )}
        <Figures view={view} row={row} />
        {row.thickPartOnly ? (
          <p className={css.note}>
            <b>{t('thick_only')}.</b> {t('thick_only_help')}
          </p>
        ) : null}
        {judged.reasons.length > 0 ? (
          <p className={css.note}>{judged.reasons.map((reason) => t(`reason.${reason}`)).join('; ')}.</p>
        ) : null}
        {judged.next === null ? null : (
          <p className={css.tool}>
            {t(`todo.${judged.next.action}`)}
            {judged.next.by === null ? '' : `, ${timeSaid(judged.next.by, { ...view, now: view.book.asOf })}`}
          </p>
        )}
        {run !== undefined && row.stage === 'date_mark' ? (
          <MarkedDays locale={view.locale} run={run} />
        ) : null}
        {run === undefined ? null : <HowJudged view={view} run={run} row={row} />}
      </div>
    </>
  );
}

/** How the figures were checked and bind, where they are not the read text of a law; and the way to the whole proof. */
function HowJudged({ view, run, row }: { view: BatchView; run: JudgedRun; row: RuleRow }) {
  const say = useTranslations('explain') as unknown as Say;
  if (run.asked === undefined) return null;
  const voice = { say: (key: string) => say(key.replace('explain.', '')) };
  const marks = [...new Set(marksOf(view, run, row).map((figure) => figureMark(figure, voice)))];
  return (
    <p className={css.note}>
      {marks
        .filter((mark) => mark !== '')
        .map((mark) => `[${mark}] `)
        .join('')}
      <Link
        className={proofCss.link ?? ''}
        href={`/batch/${view.batch.id}/proof?run=${run.key}&stage=${row.stage}`}
      >
        {say('open')}
      </Link>
    </p>
  );
}

function marksOf(view: BatchView, run: JudgedRun, { stage, judged }: RuleRow) {
  const profile = profileOf(view.book);
  const [record] = run.asked?.records ?? [];
  if (profile === null || run.asked === undefined || record === undefined) return [];
  return figuresOf(run.asked.kind, stage, record, profile, judged);
}

function Asks({ row, days }: { row: RuleRow; days: number }) {
  const t = useTranslations('batch');
  const say = useTranslations('common') as unknown as Say;
  const { limit, limit_min } = row.judged;
  return t(`rule.${row.stage}`, {
    days,
    limit: limit === null ? '' : temperature(limit.value, limit.unit),
    comparison: limit === null ? '' : t(`comparison.${limit.comparison}`),
    length: limit_min === null ? '' : length(say, limit_min),
  });
}

type WhereProps = {
  view: BatchView;
  step: RuleRow['step'];
  equipment: string | null;
  start: number;
  pieces?: number[] | null;
};

function Where({ view, step, equipment, start, pieces }: WhereProps) {
  const common = useTranslations('common');
  const place = placeName(view.book, equipment);
  const since = common('since', { time: timeSaid(start, { ...view, now: view.book.asOf }) });
  const which =
    pieces && view.batch.count !== null && pieces.length < view.batch.count
      ? pieces.map((number) => common('piece', { number, counted: countedAs(view.batch) }))
      : [];
  return (
    <p className={css.note}>
      {[common(`step.${step}`), place, since, ...which].filter((word) => word !== null).join(', ')}
    </p>
  );
}

/** The figures of one verdict: how near, how long, how many were read. */
function Figures({ view, row }: { view: BatchView; row: RuleRow }) {
  const t = useTranslations('batch.figures');
  const say = useTranslations('common') as unknown as Say;
  const { judged } = row;
  const run = view.batch.runs.find(({ key }) => key === row.run);
  const words: string[] = [];
  const off = run === undefined ? null : marginOf(run, row);
  if (off !== null) {
    const side = judged.limit?.comparison.startsWith('at_or_b') ? 'over' : 'under';
    const said = `${Math.abs(Number(off.value.toFixed(1)))} ${degrees(off.unit)}`;
    words.push(
      off.value >= 0 ? t('margin_over', { degrees: said }) : t('margin_under', { degrees: said, side }),
    );
  }
  if (judged.below_shortest_min !== undefined && judged.below_shortest_min !== null)
    words.push(
      t('under', {
        least: length(say, judged.below_shortest_min),
        most:
          judged.below_longest_min === null || judged.below_longest_min === undefined
            ? say('not_known')
            : length(say, judged.below_longest_min, 'up'),
      }),
    );
  if (judged.longest_gap_min !== undefined && judged.longest_gap_min !== null)
    words.push(t('gap', { length: length(say, judged.longest_gap_min, 'up') }));
  if (judged.limit_min !== null && row.stage !== 'house_plan_interval')
    words.push(...lengths(row, t as never, say));
  const count = row.pieces?.length ?? view.batch.count;
  if (judged.pieces_read !== undefined && count !== null && judged.pieces_read < count)
    words.push(t('pieces_read', { read: judged.pieces_read, count }));
  return words.length === 0 ? null : <p className={css.note}>{words.join(', ')}.</p>;
}

/** Held food: of the worst look. A figure to be reached: of the looks at which it was. Else there is no margin. */
function marginOf(run: JudgedRun, { stage, judged }: RuleRow): Margin | null {
  if (stage === 'at_readings') return margin(run, judged);
  if (stage !== 'temperature' || judged.verdict !== 'kept') return null;
  return margin({ step: run.step, looks: restsOn(run, judged) }, judged);
}

function lengths({ judged }: RuleRow, t: Say, say: Say): string[] {
  const words = [
    judged.longest_min === null
      ? t('longest_unknown')
      : t('longest', { length: length(say, judged.longest_min, 'up') }),
    t('shortest', { length: length(say, judged.shortest_min ?? 0) }),
  ];
  if (judged.open && judged.remaining_min !== null)
    words.push(
      judged.remaining_min >= 0
        ? t('left', { length: length(say, judged.remaining_min) })
        : t('past', { length: length(say, -judged.remaining_min, 'up') }),
    );
  return words;
}
