/** Lengths of a session, minutes. Our own choice (docs/decisions, sessions): no code asks for them. */
export const sessionTimes = {
  shiftMin: 14 * 60, // a secret entered at the start of a shift stands at most this long
  idleMin: 4 * 60, // and ends when its person has written nothing here for this long: longer than between two rounds
  handIdleMin: 10, // after this long without an entry, the tablet asks again whose hand writes
  freshMin: 5, // a secret entered again counts for a decision or a signature this long
} as const;
