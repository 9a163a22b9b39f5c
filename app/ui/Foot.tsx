import type { ReactNode } from 'react';
import css from './Foot.module.css';

/** The keys at the thumb: stays at the foot of the sheet. */
export function Foot({ children }: { children: ReactNode }) {
  return <div className={css.foot}>{children}</div>;
}
