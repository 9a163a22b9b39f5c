import Link from 'next/link';
import { sideOf } from '#lib/between/cabinet-record.ts';
import css from './PlaceName.module.css';
import type { KitchenView } from './view.ts';

type Props = { view: Pick<KitchenView, 'book'>; place: string | null; name: string };

/** The name of a place; one that holds food at a limit leads to its chart. */
export function PlaceName({ view, place, name }: Props) {
  const kind = place === null ? undefined : view.book.kitchen.equipment.get(place)?.kind;
  if (place === null || kind === undefined || sideOf(kind) === null) return name;
  return (
    <Link href={`/cabinet/${place}`} prefetch={false} className={css.name}>
      {name}
    </Link>
  );
}
