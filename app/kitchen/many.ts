import { useTranslations } from 'next-intl';
import type { RowGroup } from '#lib/fold/views.ts';
import type { KitchenView } from './view.ts';

/** "4 pieces", "2 pans"; empty for food that is not counted. */
export function useMany(
  view: Pick<KitchenView, 'book'>,
): (group: Pick<RowGroup, 'pieces' | 'batch'>) => string {
  const t = useTranslations('kitchen');
  return ({ pieces, batch }) => {
    if (pieces === null) return '';
    const pans = view.book.batches.get(batch)?.food?.counted === 'pans';
    return t(pans ? 'many_pans' : 'many', { count: pieces.length });
  };
}
