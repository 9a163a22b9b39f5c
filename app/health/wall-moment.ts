import { inZone, wallClock } from '#shared/time.ts';

/** A day and a time on the kitchen's wall: "2026-10-17 05:02". */
export const wallMoment = (ms: number, zone: string, clock: '12' | '24'): string =>
  `${inZone(ms, zone).slice(0, 10)} ${wallClock(ms, zone, clock)}`;
