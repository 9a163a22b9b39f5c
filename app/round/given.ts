import type { HandOffered } from '#app/ui/HandList.tsx';
import type { RoundPlanned, RoundState } from './round-state.ts';
import type { Press } from './round-step.ts';

export type ProbeShown = {
  id: string;
  name: string;
  colour: string; // key of common.colour
  out: boolean; // its last check was broken
  checkedAt: number | null;
};

/** The one who decides about food under the limit. */
export type Decider = { name: string; role: string; phone: string | null };

/** Everything that the round screen is given by the server: plain data and the kitchen's own clock. */
export type RoundGiven = {
  site: string;
  planned: RoundPlanned;
  hand: string | null;
  lang: 'en' | 'es';
  zone: string;
  clock: '12' | '24';
  now: number; // book's clock when the page was made, ms
  hands: HandOffered[];
  probes: ProbeShown[];
  decider: Decider | null;
  missedAt: number | null; // a round that was due long ago and that nobody has said anything about
  onlyOne: boolean; // a single look, from the cooling screen: no round is ended
  home: string;
};

/** What each face of the round is given. */
export type FaceProps = {
  state: RoundState;
  act: (what: Press) => void;
  given: RoundGiven;
  now: number; // book's clock, ms
};
