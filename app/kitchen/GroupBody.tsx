import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { countedAs } from '#app/batch/counted.ts';
import { MissWarning } from '#app/science/MissWarning.tsx';
import { Figure } from '#app/ui/Figure.tsx';
import { ProofLine } from '#app/ui/ProofLine.tsx';
import type { RowGroup } from '#lib/fold/views.ts';
import css from './GroupBody.module.css';
import { useMany } from './many.ts';
import { PlaceName } from './PlaceName.tsx';
import { Says } from './Says.tsx';
import { foodName, type KitchenView, numbers, siteOf } from './view.ts';

type Props = {
  group: RowGroup;
  view: KitchenView;
  /** The piece of equipment, and how it is called. */
  place: string | null;
  name: string;
  first: boolean;
  overdue: boolean;
};

/** One group of food: name, figure, proof line, and one line that says what it amounts to. */
export function GroupBody({ group, view, place, name, first, overdue }: Props) {
  const t = useTranslations('kitchen');
  return (
    <div className={css.body}>
      {first ? (
        <h2 className={css.name}>
          <PlaceName view={view} place={place} name={name} />
        </h2>
      ) : null}
      <Link href={`/batch/${group.batch}`} prefetch={false} className={css.food}>
        <FoodWords group={group} view={view} />
      </Link>
      <span className={css.figure}>
        <Figure
          typed={group.figure?.typed}
          unit={group.figure?.unit ?? view.unit}
          dress={group.figure?.dress ?? 'none'}
        />
      </span>
      <div className={css.line}>
        <ProofLine
          line={group.line}
          zone={view.zone}
          clock={view.clock}
          name={`${name}, ${group.batchName}`}
        />
      </div>
      <Says group={group} view={view} overdue={overdue} />
      <MissWarning book={view.book} group={group} site={siteOf(view)} />
      {group.blocked.length > 0 || group.allBlocked ? (
        <p className={css.blocked}>
          {group.allBlocked
            ? t('blocked_all')
            : t('blocked', {
                count: group.blocked.length,
                pieces: numbers(group.blocked),
                counted: countedAs(view.book.batches.get(group.batch)),
              })}
        </p>
      ) : null}
    </div>
  );
}

/** "Pork shoulder BR-A, 4 pieces · hot hold" and where the figure was read. */
export function FoodWords({ group, view }: { group: RowGroup; view: KitchenView }) {
  const t = useTranslations('kitchen');
  const common = useTranslations('common');
  const food = foodName(view.book, group.batch, view.lang);
  const many = useMany(view)(group);
  const counted = countedAs(view.book.batches.get(group.batch));
  const { figure } = group;
  const spot = figure?.spot ? common(`spot.${figure.spot}`) : null;
  const piece = figure?.piece ? common('piece', { number: figure.piece, counted }) : null;
  return (
    <>
      <span>{[`${food} ${group.batchName}`.trim(), many].filter(Boolean).join(', ')}</span>
      <span className={css.where}>
        {[common(`step.${group.step}`), spot, piece].filter(Boolean).join(', ')}
        {figure?.dress === 'hollow' ? `, ${t('old_figure')}` : ''}
      </span>
    </>
  );
}
