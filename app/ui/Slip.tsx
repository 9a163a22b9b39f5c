import type { ReactNode } from 'react';
import css from './Slip.module.css';

type Props = {
  kind: 'question' | 'note' | 'not-sent';
  bar?: boolean;
  title?: ReactNode;
  children?: ReactNode;
};

/** Not yet in the book, a question, or a remark: a dashed edge, never a solid block. `bar` spans the sheet. */
export function Slip({ kind, bar = false, title, children }: Props) {
  const role = kind === 'question' ? 'group' : 'status';
  return (
    <div className={`${css.slip} ${bar ? css.bar : css.box}`} role={role}>
      {title ? <p className={kind === 'question' ? css.question : css.title}>{title}</p> : null}
      {children}
    </div>
  );
}
