'use client'; // readies this phone for the hours without network
import { useEffect } from 'react';

/** After the first paint: the worker, room in the phone's store that the browser does not take away, and the book. */
export function KeepReady() {
  useEffect(() => {
    void import('./keep-ready.ts').then(({ keepReady }) => keepReady()).catch(() => {});
  }, []);
  return null;
}
