import { useTranslations } from 'next-intl';
import { countedAs } from '#app/batch/counted.ts';
import type { RowGroup } from '#lib/fold/views.ts';
import type { KitchenView } from './view.ts';

/** "4 pieces", "2 pans"; empty for food that is not counted. */
export function useMany(
  view: Pick<KitchenView, 'book'>,
): (group: Pick<RowGroup, 'pieces' | 'batch'>) => string {
  const t = useTranslations('common');
  return ({ pieces, batch }) => {
    if (pieces === null) return '';
    return t('pieces', { count: pieces.length, counted: countedAs(view.book.batches.get(batch)) });
  };
}
