/** How far a clock is off, for words: whole minutes and which way. `offMs` positive = it is ahead. */
export const clockWords = (offMs: number): { minutes: number; way: 'ahead' | 'behind' } => ({
  minutes: Math.round(Math.abs(offMs) / 60_000),
  way: offMs > 0 ? 'ahead' : 'behind',
});
