import type { ReactNode } from 'react';
import css from './Section.module.css';

/** The section of the rule, in the rule's own voice. */
export function Section({ children }: { children: ReactNode }) {
  return <span className={css.section}>{children}</span>;
}
