import { useEffect, useState } from 'react';

export type Awake = 'asking' | 'awake' | 'not_here';

/**
 * Keeps the screen awake while the round is open. Browsers allow it on a trusted connection only (https, or this
 * very machine) and take it back when the page is hidden: it is asked for again on return. `not_here` is said.
 */
export function useWakeLock(): Awake {
  const [awake, setAwake] = useState<Awake>('asking');
  useEffect(() => {
    let lock: WakeLockSentinel | null = null;
    let left = false;
    const ask = async (): Promise<void> => {
      if (!('wakeLock' in navigator)) return setAwake('not_here');
      if (document.visibilityState !== 'visible') return;
      try {
        lock = await navigator.wakeLock.request('screen');
        if (left) await lock.release();
        else setAwake('awake');
      } catch {
        setAwake('not_here'); // low battery, or a policy of the device
      }
    };
    const again = (): void => void ask();
    again();
    document.addEventListener('visibilitychange', again);
    return () => {
      left = true;
      document.removeEventListener('visibilitychange', again);
      void lock?.release();
    };
  }, []);
  return awake;
}
