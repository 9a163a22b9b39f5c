import { getTranslations } from 'next-intl/server';
import { loadBook } from '#app/server/book.ts';
import { entrance } from '#app/server/session.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { sideOf } from '#lib/between/cabinet-record.ts';
import css from './cabinet.module.css';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('cabinet');
  return { title: t('all') };
}

/** Every place that holds food at a limit, in the order of the walk: each a way to its chart. */
export default async function CabinetsPage() {
  const { kitchen } = await loadBook(await entrance());
  const t = await getTranslations('cabinet');
  const common = await getTranslations('common');
  const places = [...kitchen.equipment.values()].filter(
    ({ kind, active }) => active && sideOf(kind) !== null,
  );
  return (
    <Sheet>
      <Headband back={{ href: '/', words: common('kitchen_now') }} />
      <main className={css.page}>
        <h1>{t('all')}</h1>
        {places.length === 0 ? <p>{t('all_none')}</p> : null}
        {places.map(({ equipment, name, kind }) => (
          <KeyLink key={equipment} href={`/cabinet/${equipment}`} sub={common(`equipment.${kind}`)}>
            {name}
          </KeyLink>
        ))}
      </main>
    </Sheet>
  );
}
