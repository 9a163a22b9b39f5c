import type { Written } from '#app/client/written.ts';
import type { Body } from '#shared/entries/entry.ts';
import type { StepName } from '#shared/entries/step-name.ts';

type DeviationBody = Body<'deviation'>;

/** The food, the equipment or the thermometer that it is about. */
export type About =
  | {
      kind: 'food';
      batch: string;
      pieces: number[] | null;
      step: StepName | null;
      equipment: string | null;
      limit: DeviationBody['limit'];
    }
  | { kind: 'equipment'; equipment: string }
  | { kind: 'probe'; probe: string };

/** Since when: the last good look (its entry and moment), a time that is known and how, or nobody knows. */
export type SinceChoice =
  | { kind: 'good'; entry: string; at: string }
  | { kind: 'known'; at: string; basis: string }
  | { kind: 'unknown' };

/**
 * A deviation that a person opens. The last good look is named by its entry and the time is left to the fold;
 * a time that is known otherwise is written with how it is known.
 */
export function openedByHand(about: About, since: SinceChoice, text: string, lang: 'en' | 'es'): Written {
  const blank = { batch: null, pieces: null, step: null, equipment: null, probe: null, limit: null };
  const { kind: _, ...scope } = about;
  return {
    kind: 'deviation',
    body: {
      ...blank,
      ...scope,
      found: null,
      last_good: since.kind === 'good' ? since.entry : null,
      since: since.kind === 'known' ? since.at : null,
      since_basis: since.kind === 'known' && since.basis.trim() !== '' ? since.basis.trim() : null,
      text: text.trim(),
      lang,
    },
  };
}
