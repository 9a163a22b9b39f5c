'use client'; // keeps typed words over a sign-in
import { usePathname } from 'next/navigation';
import { useCallback, useEffect } from 'react';
import type { Typed } from './typed-values.ts';

/**
 * What was typed and refused waits in this tab, so that a sign-in in between loses nothing. It is put back once,
 * when the page is opened again. Never for secrets.
 */
export function useKeptTyped(putBack: (typed: Typed) => void) {
  const key = `typed:${usePathname()}`;
  useEffect(() => {
    const kept = sessionStorage.getItem(key);
    if (kept === null) return;
    sessionStorage.removeItem(key);
    putBack(JSON.parse(kept) as Typed);
  }, [key, putBack]);
  return useCallback((typed: Typed) => sessionStorage.setItem(key, JSON.stringify(typed)), [key]);
}
