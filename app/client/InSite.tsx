'use client'; // forms below know in whose outbox they write
import { createContext, type ReactNode, useContext } from 'react';

const Site = createContext<string | null>(null);

/** The kitchen in which the forms below write. */
export function InSite({ site, children }: { site: string; children: ReactNode }) {
  return <Site value={site}>{children}</Site>;
}

/** @throws Error when a form stands on a page that does not say its kitchen: a fault of the program */
export function useSite(): string {
  const site = useContext(Site);
  if (site === null) throw new Error('useSite: no InSite above this form');
  return site;
}
