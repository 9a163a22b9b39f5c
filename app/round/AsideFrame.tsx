import { type ReactNode, useEffect, useRef } from 'react';
import css from './AsideFrame.module.css';

/** One question at a time: its title takes the focus, its keys stand below. */
export function AsideFrame({ title, children }: { title: ReactNode; children: ReactNode }) {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  return (
    <main className={css.aside}>
      <h1 ref={head} tabIndex={-1} className={css.title}>
        {title}
      </h1>
      {children}
    </main>
  );
}

/** Keys under one another, each as wide as the sheet. */
export function Keys({ children }: { children: ReactNode }) {
  return <div className={css.keys}>{children}</div>;
}

/** The keys at the thumb. */
export function Last({ children }: { children: ReactNode }) {
  return <div className={css.last}>{children}</div>;
}
