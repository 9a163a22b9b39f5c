import type { ReactNode } from 'react';
import css from './Sheet.module.css';

export type SheetWidth = 'phone' | 'tablet' | 'batch' | 'desk';

/** The sheet of paper on the wrap: one a page. */
export function Sheet({ width = 'phone', children }: { width?: SheetWidth; children: ReactNode }) {
  return <div className={`${css.sheet} ${css[width]}`}>{children}</div>;
}
