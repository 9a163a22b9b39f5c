import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { Hand, RuledRow } from '#app/ui/Ruled.tsx';
import type { Row } from '#lib/fold/views.ts';
import css from './EquipmentRows.module.css';
import { GroupBody } from './GroupBody.tsx';
import { PlaceName } from './PlaceName.tsx';
import { type KitchenView, timeOf } from './view.ts';

/** One piece of equipment: a row for each group of food in it, its name on the first. */
export function EquipmentRows({ row, view }: { row: Row; view: KitchenView }) {
  const t = useTranslations('kitchen');
  const name = row.name ?? t('nowhere');
  return (
    <>
      {row.groups.map((group, i) => (
        <RuledRow
          key={group.run}
          margin={
            group.figure ? (
              <>
                <time>{timeOf(view, group.figure.at)}</time>
                <Hand initials={group.figure.by} />
              </>
            ) : null
          }
        >
          {i === 0 ? <OffSince row={row} view={view} /> : null}
          <GroupBody
            group={group}
            view={view}
            place={row.equipment}
            name={name}
            first={i === 0}
            overdue={row.state === 'overdue'}
          />
        </RuledRow>
      ))}
      {row.groups.length === 0 ? (
        <RuledRow margin={row.air ? <time>{timeOf(view, row.air.at)}</time> : null}>
          <h2 className={css.name}>
            <PlaceName view={view} place={row.equipment} name={name} />
          </h2>
          <OffSince row={row} view={view} />
          <p className={css.note}>{t('empty_place')}</p>
        </RuledRow>
      ) : null}
    </>
  );
}

function OffSince({ row, view }: { row: Row; view: KitchenView }) {
  const t = useTranslations('kitchen');
  if (row.offSince === null) return null;
  return (
    <p className={css.off}>
      <Link href="/kitchen/dark" prefetch={false}>
        {t('off_since', { time: timeOf(view, row.offSince) })}
      </Link>
    </p>
  );
}
