import { type ReactNode, useEffect, useRef } from 'react';
import { Foot } from '#app/ui/Foot.tsx';
import css from './AsideFrame.module.css';

/** One question at a time: its title takes the focus, its keys stand below. */
export function AsideFrame({
  title,
  foot,
  children,
}: {
  title: ReactNode;
  foot?: ReactNode;
  children: ReactNode;
}) {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    window.scrollTo(0, 0);
    head.current?.focus({ preventScroll: true });
  }, []);
  return (
    <>
      <main className={css.aside}>
        <h1 ref={head} tabIndex={-1} className={css.title}>
          {title}
        </h1>
        {children}
      </main>
      {foot ? <Foot>{foot}</Foot> : null}
    </>
  );
}

/** Keys under one another, each as wide as the sheet. */
export function Keys({ children }: { children: ReactNode }) {
  return <div className={css.keys}>{children}</div>;
}

/** Short keys beside one another. */
export function Beside({ children }: { children: ReactNode }) {
  return <div className={css.besides}>{children}</div>;
}

/** The keys at the thumb. */
export function Last({ children }: { children: ReactNode }) {
  return <div className={css.last}>{children}</div>;
}
