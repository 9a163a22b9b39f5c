import type { ReactNode } from 'react';
import css from './Ruled.module.css';

/** A ruled list with the margin: time and hand in it, the rest beside it. */
export function Ruled({ children }: { children: ReactNode }) {
  return <ul className={css.ruled}>{children}</ul>;
}

export function RuledRow({ margin, children }: { margin: ReactNode; children: ReactNode }) {
  return (
    <li className={css.row}>
      <div className={css.margin}>{margin}</div>
      <div className={css.body}>{children}</div>
    </li>
  );
}

/** Initials as the hand that wrote. */
export function Hand({ initials }: { initials: string }) {
  return <span className={css.hand}>{initials}</span>;
}
