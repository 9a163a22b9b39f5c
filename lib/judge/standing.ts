import type { StageName, Verdict } from './answer.ts';

export type Standing = 'serve' | 'do_not_serve' | 'gone';

/** What happens to pieces, as a batch's events say it. `pieces` null = all that are not gone. Instants in ms. */
export type StandingEvent = { at: number } & (
  | { type: 'batch'; pieces: readonly string[] }
  | { type: 'stage'; stage: StageName | string; verdict: Verdict; pieces: readonly string[] | null }
  | { type: 'deviation'; pieces: readonly string[] | null }
  | {
      type: 'reheat';
      pieces: readonly string[] | null;
      temperature: Verdict;
      time: Verdict;
      allowed: boolean; // the house rules let a reheat return food
      in_time: boolean; // begun within the time that they allow
    }
  | { type: 'decision'; pieces: readonly string[] | null; role: string; reason: string; allowed: boolean }
  | { type: 'discard'; pieces: readonly string[] | null }
  | { type: 'split' | 'cut'; from: string; to: readonly string[] }
  | { type: 'join'; from: readonly string[]; to: string }
);

/** Not of a published rule, so a broken one blocks no food. */
const blocksNothing: ReadonlySet<string> = new Set(['between_readings', 'house_plan_interval']);

const decides = (role: string): boolean => role === 'manager' || role === 'owner';

type Pieces = Map<string, Standing>;

function set(pieces: Pieces, named: readonly string[] | null, standing: Standing): void {
  for (const piece of named ?? pieces.keys())
    if (pieces.has(piece) && pieces.get(piece) !== 'gone') pieces.set(piece, standing);
}

/** A piece made of others is gone when all of them are, and blocked when one of the rest is. */
function joined(pieces: Pieces, from: readonly string[]): Standing {
  const parts = from.map((piece) => pieces.get(piece) ?? 'serve');
  if (parts.length > 0 && parts.every((part) => part === 'gone')) return 'gone';
  return parts.includes('do_not_serve') ? 'do_not_serve' : 'serve';
}

function remake(pieces: Pieces, from: readonly string[], to: readonly string[]): void {
  const standing = joined(pieces, from);
  for (const piece of from) pieces.delete(piece);
  for (const piece of to) pieces.set(piece, standing);
}

function apply(pieces: Pieces, event: StandingEvent): void {
  switch (event.type) {
    case 'batch':
      for (const piece of event.pieces) if (!pieces.has(piece)) pieces.set(piece, 'serve');
      return;
    case 'stage':
      if (event.verdict === 'broken' && !blocksNothing.has(event.stage))
        set(pieces, event.pieces, 'do_not_serve');
      return;
    case 'deviation':
      set(pieces, event.pieces, 'do_not_serve');
      return;
    case 'reheat':
      if (event.temperature === 'kept' && event.time === 'kept' && event.allowed && event.in_time)
        set(pieces, event.pieces, 'serve');
      return;
    case 'decision':
      if (decides(event.role) && event.allowed && event.reason.trim() !== '')
        set(pieces, event.pieces, 'serve');
      return;
    case 'discard':
      set(pieces, event.pieces, 'gone');
      return;
    case 'split':
    case 'cut':
      remake(pieces, [event.from], event.to);
      return;
    case 'join':
      remake(pieces, event.from, [event.to]);
      return;
  }
}

/**
 * Which pieces may be served, as of a moment (docs/judge.md 4.10). Being warm again ends nothing: a block ends by a
 * kept reheat begun in time where the house lets it, by a manager's or owner's decision with a reason, or by
 * discarding. Split, cut and join hand it on.
 */
export function standing(events: readonly StandingEvent[], asOf: number): ReadonlyMap<string, Standing> {
  const pieces: Pieces = new Map();
  for (const event of events.filter(({ at }) => at <= asOf).sort((a, b) => a.at - b.at)) apply(pieces, event);
  return pieces;
}
