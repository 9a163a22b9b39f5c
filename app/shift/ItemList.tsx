import Link from 'next/link';
import { Mark } from '#app/ui/Mark.tsx';
import { Hand, Ruled, RuledRow } from '#app/ui/Ruled.tsx';
import css from './page.module.css';
import type { ShiftItem } from './shift-items.ts';

type Props = { title: string; items: ShiftItem[]; none: string; time: (ms: number) => string };

/** One list of a shift change, ruled: time and hand in the margin, the state's mark at the right. */
export function ItemList({ title, items, none, time }: Props) {
  return (
    <section>
      <h2 className={css.head}>{title}</h2>
      {items.length === 0 ? (
        <p className={css.note}>{none}</p>
      ) : (
        <Ruled>
          {items.map((item) => (
            <RuledRow
              key={item.key}
              margin={
                <>
                  {item.at === null ? null : (
                    <time className={item.tool ? css.tool : css.time}>{time(item.at)}</time>
                  )}
                  {item.hand === null ? null : <Hand initials={item.hand} />}
                </>
              }
            >
              <Link href={item.href} prefetch={false} className={css.item}>
                <span>
                  <strong>{item.words}</strong>
                  <span className={css.small}>{item.note}</span>
                </span>
                <Mark word={item.mark} size="page" alone />
              </Link>
            </RuledRow>
          ))}
        </Ruled>
      )}
    </section>
  );
}
