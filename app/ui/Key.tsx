import type { ComponentProps, ReactNode } from 'react';
import css from './Key.module.css';

export type KeyKind = 'plain' | 'normal' | 'save' | 'num';

type Props = Omit<ComponentProps<'button'>, 'className'> & {
  kind?: KeyKind | undefined;
  /** A second, smaller line. */
  sub?: ReactNode;
  /** One of several that stays down: says so to a screen reader too. */
  down?: boolean | undefined;
  /** Why it cannot be pressed yet: the key stays reachable, dashed, with this reason in it. */
  cannot?: string | null | undefined;
  /** Over the whole width. */
  wide?: boolean | undefined;
};

export const keyClass = (kind: KeyKind, wide = false): string =>
  [css.key, css[kind], wide ? css.wide : ''].filter(Boolean).join(' ');

export function Key({ kind = 'normal', sub, down, cannot, wide, children, type, onClick, ...rest }: Props) {
  const stopped = cannot !== undefined && cannot !== null;
  return (
    <button
      {...rest}
      type={stopped ? 'button' : (type ?? 'button')}
      className={keyClass(kind, wide)}
      {...(down === undefined ? {} : { 'aria-pressed': down })}
      {...(stopped ? { 'aria-disabled': true } : onClick ? { onClick } : {})}
    >
      <span>{children}</span>
      {stopped ? <small>{cannot}</small> : sub ? <small>{sub}</small> : null}
    </button>
  );
}
