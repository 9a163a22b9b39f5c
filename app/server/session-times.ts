/** Lengths of a session, minutes. Our own choice (docs/decisions, sessions): no code asks for them. */
export const sessionTimes = {
  shiftMin: 14 * 60, // a secret entered at the start of a shift stands at most this long
  idleMin: 4 * 60, // and ends when its person has written nothing here for this long: longer than between two rounds
  handIdleMin: 10, // after this long without an entry, the tablet asks again whose hand writes
  freshMin: 5, // a secret entered again counts for a decision or a signature this long
} as const;

const clockSlackMs = 60_000;

/**
 * Whether an instant (ms) lies in the last `minutes` before `now`. One ahead of it was noted while the server's clock was
 * wrong, and stands for nothing: it would otherwise stand until that day.
 */
export const isWithin = (at: number, minutes: number, now: number): boolean =>
  now - at <= minutes * 60_000 && at - now <= clockSlackMs;
