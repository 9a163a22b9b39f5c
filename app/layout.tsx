import type { Metadata, Viewport } from 'next';
import { cookies } from 'next/headers';
import { getLocale } from 'next-intl/server';
import type { ReactNode } from 'react';
import '#app/ui/tokens.css';
import '#app/ui/global.css';
import { KeepReady } from '#app/client/KeepReady.tsx';
import { Words } from '#app/ui/Words.tsx';

export const metadata: Metadata = { title: 'Holdproof' };
export const viewport: Viewport = { width: 'device-width', initialScale: 1 };

/** The room is what this device was last set to; without that its own preference for light or dark decides. */
export default async function Layout({ children }: { children: ReactNode }) {
  const asked = (await cookies()).get('room')?.value;
  const room = asked === 'day' || asked === 'pit' ? { 'data-room': asked } : {};
  return (
    <html lang={await getLocale()} {...room}>
      <body>
        <Words names={[]}>{children}</Words>
        <KeepReady />
      </body>
    </html>
  );
}
