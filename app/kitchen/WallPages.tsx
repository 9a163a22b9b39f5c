'use client';
// A client island: turns the pages of a wall that holds more than six places.

import { useTranslations } from 'next-intl';
import { Children, type ReactNode, useEffect, useState } from 'react';
import { Key } from '#app/ui/Key.tsx';
import css from './KitchenWall.module.css';

const eachMs = 15_000;

/** One page at a time, worst first. A page on which something is wrong stays until a hand turns it. */
export function WallPages({ wrong, children }: { wrong: boolean[]; children: ReactNode }) {
  const t = useTranslations('kitchen');
  const pages = Children.toArray(children);
  const [at, setAt] = useState(0);
  const page = Math.min(at, Math.max(0, pages.length - 1));
  const stays = wrong[page] === true;
  useEffect(() => {
    if (stays || pages.length < 2) return;
    const timer = setInterval(() => setAt((before) => (before + 1) % pages.length), eachMs);
    return () => clearInterval(timer);
  }, [stays, pages.length]);
  return (
    <>
      {pages[page]}
      {pages.length > 1 ? (
        <Key kind="plain" wide onClick={() => setAt((page + 1) % pages.length)}>
          <span className={css.pageOf}>{t('page', { page: page + 1, pages: pages.length })}</span>
        </Key>
      ) : null}
    </>
  );
}
