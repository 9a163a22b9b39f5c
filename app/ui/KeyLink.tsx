import Link from 'next/link';
import type { ReactNode } from 'react';
import { type KeyKind, keyClass } from './Key.tsx';

type Props = {
  href: string;
  kind?: KeyKind;
  sub?: ReactNode;
  wide?: boolean;
  children: ReactNode;
  prefetch?: boolean;
};

/** A key that goes somewhere. */
export function KeyLink({ href, kind = 'normal', sub, wide = false, children, prefetch = false }: Props) {
  return (
    <Link href={href} prefetch={prefetch} className={keyClass(kind, wide)}>
      <span>{children}</span>
      {sub ? <small>{sub}</small> : null}
    </Link>
  );
}
