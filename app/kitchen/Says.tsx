import { useLocale, useTranslations } from 'next-intl';
import { dayWords } from '#app/batch/said.ts';
import { StretchWord } from '#app/ui/StretchWord.tsx';
import { Verdict } from '#app/ui/Verdict.tsx';
import type { RowGroup } from '#lib/fold/views.ts';
import css from './Says.module.css';
import { type KitchenView, timeOf } from './view.ts';

type Props = { group: RowGroup; view: KitchenView; overdue: boolean; size?: 'row' | 'cell' | 'wall' };

/**
 * What a group amounts to, in one line: its rule's verdict "at each look", or that nobody looked since; then the
 * deadline of a cooling or reheat, or the next look. Never a word about the food itself.
 */
export function Says({ group, view, overdue, size = 'row' }: Props) {
  const t = useTranslations('kitchen');
  const { verdict, since } = group;
  const broken = verdict?.verdict === 'broken';
  const isDated = verdict?.stage === 'date_mark'; // its day stands behind it, no time of day
  const late = overdue && !broken && group.latestAt !== null && group.latestAt < view.now.asOf;
  return (
    <p className={`${css.says} ${css[size]}`}>
      {late ? <StretchWord kind="nobody_looked" /> : null}
      {!late && verdict !== null ? (
        <Verdict verdict={verdict.verdict} size={size === 'cell' ? 'page' : size} />
      ) : null}
      <span className={css.note}>
        {broken && !isDated && since !== null ? t('since_worst', { time: timeOf(view, since) }) : null}
        {broken && !isDated && since === null ? t('since_unknown') : null}
        {late && since !== null ? t('since', { time: timeOf(view, since) }) : null}
        {!late && verdict === null ? t('not_judged') : null}
        {verdict?.verdict === 'kept' && !late ? t('at_each_look') : null}
      </span>
      {group.useBy ? <UseBy useBy={group.useBy} /> : null}
      <ByWhen group={group} view={view} />
    </p>
  );
}

/** Cold food on its last day, or past it. */
function UseBy({ useBy: { state, lastDay, section } }: { useBy: NonNullable<RowGroup['useBy']> }) {
  const t = useTranslations('kitchen.use_by');
  const locale = useLocale();
  return (
    <span className={css.tool}>
      {t(state, { day: dayWords(lastDay, locale) })} <span className={css.section}>{section}</span>
    </span>
  );
}

function ByWhen({ group, view }: Pick<Props, 'group' | 'view'>) {
  const t = useTranslations('kitchen');
  if (group.deadline !== null) {
    const { at, stage, section } = group.deadline;
    const key = stage === 'stage_1' ? 'stage_1' : stage === 'time' ? 'reheat' : 'total';
    return (
      <span className={css.tool}>
        {t(`deadline.${key}`, { time: timeOf(view, at) })} <span className={css.section}>{section}</span>
      </span>
    );
  }
  if (group.dueAt === null) return null;
  const by = group.latestAt ?? group.dueAt;
  return (
    <span className={css.tool}>
      {t(by < view.now.asOf ? 'was_due' : 'look_by', { time: timeOf(view, by) })}
    </span>
  );
}
