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

/** The band of wrap at the top: the way back or the title at the left, the clock or what else at the right. */
export function Headband({ title, back, clock, right }: Props) {
  return (
    <header className={css.headband}>
      <div className={css.left}>
        {back ? (
          <Link href={back.href} className={css.back}>
            {back.words}
          </Link>
        ) : null}
        {title ? <h1 className={css.title}>{title}</h1> : null}
      </div>
      <div className={css.right}>
        {right}
        {clock ? <Clock time={clock} /> : null}
      </div>
    </header>
  );
}
