'use client'; // the whole of this page is drawn on the phone
import dynamic from 'next/dynamic';

/** Without the server's drawing: it knows no store and no address of this phone. */
const Away = dynamic(() => import('./Away.tsx').then((m) => m.Away), { ssr: false });

export function AwayLoader() {
  return <Away />;
}
