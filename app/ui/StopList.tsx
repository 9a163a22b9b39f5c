import type { ReactNode } from 'react';
import css from './StopList.module.css';

export type Stop = { title: ReactNode; note?: ReactNode; href?: string | undefined };

/** What to do below the limit, in this order: stop, tag, call, then read every piece. `href` may be a tel: link. */
export function StopList({ stops }: { stops: readonly Stop[] }) {
  return (
    <ol className={css.list}>
      {stops
        .map((stop, place) => ({ ...stop, number: place + 1 }))
        .map((stop) => {
          const inside = (
            <>
              <b className={css.number} aria-hidden="true">
                {stop.number}
              </b>
              <span>
                <span className={css.title}>{stop.title}</span>
                {stop.note ? <span className={css.note}>{stop.note}</span> : null}
              </span>
            </>
          );
          return (
            <li key={stop.number}>
              {stop.href ? (
                <a href={stop.href} className={css.stop}>
                  {inside}
                </a>
              ) : (
                <div className={css.stop}>{inside}</div>
              )}
            </li>
          );
        })}
    </ol>
  );
}
