import { useTranslations } from 'next-intl';
import type { ReactNode } from 'react';
import { Axis } from '#app/ui/Axis.tsx';
import { Foot } from '#app/ui/Foot.tsx';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Ruled, RuledRow } from '#app/ui/Ruled.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { EquipmentRows } from './EquipmentRows.tsx';
import css from './KitchenPhone.module.css';
import { NextStrips } from './NextStrips.tsx';
import { RoundKey } from './RoundKey.tsx';
import { type KitchenView, timeOf } from './view.ts';

/** Kitchen now on a phone: the next, then each piece of equipment, worst first, then the keys at the thumb. */
export function KitchenPhone({ view, fresh }: { view: KitchenView; fresh: ReactNode }) {
  const t = useTranslations('kitchen');
  const rows = view.now.rows.filter((row) => row.groups.length > 0 || row.offSince !== null);
  const bare = view.now.rows.filter((row) => row.groups.length === 0 && row.offSince === null);
  const line = rows.flatMap((row) => row.groups.map((group) => group.line))[0];
  return (
    <Sheet>
      <Headband title={t('title')} clock={timeOf(view, view.now.asOf)} />
      <main className={css.main}>
        {fresh}
        <NextStrips view={view} />
        {rows.length === 0 ? (
          <Empty />
        ) : (
          <Ruled>
            {line ? (
              <RuledRow margin={null}>
                <Axis from={line.from} to={line.to} zone={view.zone} clock={view.clock} />
              </RuledRow>
            ) : null}
            {rows.map((row) => (
              <EquipmentRows key={row.equipment ?? 'nowhere'} row={row} view={view} />
            ))}
          </Ruled>
        )}
        {rows.length > 0 && bare.length > 0 ? (
          <p className={css.bare}>{t('empty_places', { names: bare.map((row) => row.name).join(', ') })}</p>
        ) : null}
        <p className={css.nobody}>{t('nobody_wakes')}</p>
      </main>
      <Foot>
        <RoundKey view={view} />
        <KeyLink kind="plain" href="/kitchen/more">
          {t('more')}
        </KeyLink>
      </Foot>
    </Sheet>
  );
}

/** Nothing is in the kitchen: blank ruled paper, and the first batch. */
export function Empty() {
  const t = useTranslations('kitchen');
  return (
    <section className={css.empty}>
      <h2>{t('empty')}</h2>
      <p>{t('empty_why')}</p>
      <KeyLink kind="save" href="/batch/new" wide>
        {t('first_batch')}
      </KeyLink>
    </section>
  );
}
