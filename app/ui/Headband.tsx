import Link from 'next/link';
import type { ReactNode } from 'react';
import { Clock } from './Clock.tsx';
import css from './Headband.module.css';

type Props = {
  title?: string | undefined;
  back?: { href: string; words: string } | undefined;
  clock?: string | undefined;
  right?: ReactNode;
};

/** The band of wrap at the top: title, way back, clock. Without a title the way back stands at the left. */
export function Headband({ title, back, clock, right }: Props) {
  const way = back ? (
    <Link href={back.href} className={css.back}>
      {back.words}
    </Link>
  ) : null;
  return (
    <header className={css.headband}>
      {title ? <h1 className={css.title}>{title}</h1> : way}
      <div className={css.right}>
        {title ? way : null}
        {right}
        {clock ? <Clock time={clock} /> : null}
      </div>
    </header>
  );
}
