'use client'; // keeps typed words over a reload
import { useEffect, useState } from 'react';

/**
 * Words that are being typed, kept in this tab until they are sent: a reload or a sign-in in between loses none of
 * them. Never for secrets.
 */
export function useKeptWords(key: string, first: Record<string, string>) {
  const [words, setWords] = useState(first);
  useEffect(() => {
    const kept = sessionStorage.getItem(key);
    if (kept !== null) setWords((now) => ({ ...now, ...(JSON.parse(kept) as Record<string, string>) }));
  }, [key]);
  const write = (name: string, text: string) => {
    const next = { ...words, [name]: text };
    setWords(next);
    sessionStorage.setItem(key, JSON.stringify(next));
  };
  return { words, write, forget: () => sessionStorage.removeItem(key) };
}
