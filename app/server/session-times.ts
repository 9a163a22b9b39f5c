/** Lengths of a session, minutes. Our own choice (docs/decisions, sessions): no code asks for them. */
export const sessionTimes = {
  shiftMin: 14 * 60, // a secret entered at the start of a shift stands at most this long
  idleMin: 4 * 60, // and ends when its person has written nothing here for this long: longer than between two rounds
  handIdleMin: 10, // after this long without an entry, the tablet asks again whose hand writes
  freshMin: 5, // a secret entered again counts for a decision or a signature this long
} as const;

/**
 * Whether an instant (ms) lies no farther than `minutes` from `now`, on either side: the server's clock may have been
 * set back since, and what was noted while it was far ahead must not stand until that day.
 */
export const isNear = (at: number, minutes: number, now: number): boolean =>
  Math.abs(now - at) <= minutes * 60_000;
