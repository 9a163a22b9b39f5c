import type { Draft } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';

/**
 * The columns that are read out of an entry's text for the indexes. They say nothing that the text does not say,
 * and the checker works them out again.
 */
export type Derived = {
  atMs: number;
  /** What the entry is about: its batch; without one, the probe of a check, the equipment of the rest. */
  subject: string | null;
  /** The one entry to which it refers: what an amendment corrects, the deviation by hand that an action is for. */
  target: string | null;
  /** The operating day that a signature stands under. */
  day: string | null;
};

export function derived({ at, kind, body }: Pick<Draft, 'at' | 'kind'> & { body: object }): Derived {
  const says = body as Record<string, unknown>;
  const deviation = typeof says.deviation === 'string' ? says.deviation.split('/') : [];
  return {
    atMs: msOf(at),
    subject: uuidOf(says.batch) ?? uuidOf(deviation.length > 1 ? deviation[0] : null) ?? thingOf(kind, says),
    target:
      uuidOf(says.target) ?? uuidOf(says.confirms) ?? (deviation.length === 1 ? uuidOf(deviation[0]) : null),
    day: kind === 'signature' && typeof says.day === 'string' ? says.day : null,
  };
}

const things: Partial<Record<Draft['kind'], string>> = {
  probe_check: 'probe',
  reading: 'equipment',
  equipment_off: 'equipment',
  equipment_on: 'equipment',
};

function thingOf(kind: Draft['kind'], says: Record<string, unknown>): string | null {
  const member = things[kind];
  return member === undefined ? null : uuidOf(says[member]);
}

const uuid = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;
const uuidOf = (value: unknown): string | null =>
  typeof value === 'string' && uuid.test(value) ? value.toLowerCase() : null;
