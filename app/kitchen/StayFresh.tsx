'use client';
// A client island: draws the page again by itself, and says so plainly when it cannot.

import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useEffect, useState } from 'react';
import { PhoneState } from '#app/client/PhoneState.tsx';
import { NotSent } from '#app/outbox/NotSent.tsx';
import { wallTime } from '#app/round/wall-time.ts';
import { Slip } from '#app/ui/Slip.tsx';

const everyMs = 30_000;

type Props = { site: string; zone: string; clock: '12' | '24'; asOf: number };

/**
 * Asks the server again every half minute while the page is seen; the place on the page stays. Without an answer
 * the page says how old it is: an old screen must never look like the kitchen now.
 */
export function StayFresh({ site, zone, clock, asOf }: Props) {
  const router = useRouter();
  const t = useTranslations('kitchen');
  const [away, setAway] = useState<'no_network' | 'refused' | null>(null);
  useEffect(() => {
    const look = async (): Promise<void> => {
      if (document.visibilityState !== 'visible') return;
      const state = await answer();
      setAway(state);
      if (state === null) router.refresh();
    };
    const timer = setInterval(() => void look(), everyMs);
    const shown = (): void => void look();
    document.addEventListener('visibilitychange', shown);
    window.addEventListener('online', shown);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', shown);
      window.removeEventListener('online', shown);
    };
  }, [router]);
  return (
    <>
      <NotSent site={site} zone={zone} clock={clock} />
      <PhoneState site={site} />
      {away === null ? null : (
        <Slip kind="note" bar title={t(`away.${away}`)}>
          <p>{t('away.as_of', { time: wallTime(asOf, zone, clock) })}</p>
        </Slip>
      )}
    </>
  );
}

/** null = the server answered. It is asked for its clock first, because a failed refresh says nothing. */
async function answer(): Promise<'no_network' | 'refused' | null> {
  try {
    const response = await fetch('/round/clock', { cache: 'no-store' });
    return response.ok ? null : 'refused';
  } catch {
    return 'no_network';
  }
}
