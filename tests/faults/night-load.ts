import { v7 } from 'uuid';
import type { Visitor } from '#bin/visitor.ts';
import type { Body, Draft, DraftOf, Kind } from '#shared/entries/entry.ts';
import { versions } from '#shared/entries/versions.ts';
import { isoOf } from '#shared/time.ts';

/** What one pan of beans writes into the book in an hour: posts in their order, of which any may be cut. */
export type Load = { begin: Draft[]; posts: Draft[][] };

/** @param looks how many single looks are sent, beside corrections and one post of five */
export function panOfBeans(visitor: Visitor, looks: number): Load {
  const start = Date.now() - 3_600_000;
  const draft = <K extends Kind>(kind: K, body: Body<K>, at: number): DraftOf<K> => ({
    id: v7(),
    kind,
    version: versions[kind],
    at: isoOf(at),
    entered_at: isoOf(at),
    by: visitor.person,
    body,
  });
  const [food, batch] = [v7(), v7()];
  const look = (n: number) => {
    const value = 140 + n / 10; // no two alike: the same look twice within a minute would be asked about
    return draft(
      'reading',
      {
        batch,
        piece: null,
        equipment: visitor.equipment,
        spot: 'coldest',
        typed: value.toFixed(1),
        value,
        unit: 'degF',
        probe: visitor.probe,
        held_s: null,
        round: null,
        source: 'hand',
        correction: null,
        late_reason: null,
      },
      start + 60_000 + n * 1000,
    );
  };
  const corrected = (n: number): Draft[] => {
    const wrong = look(n);
    const { typed } = wrong.body;
    const right = (wrong.body.value + 1).toFixed(1);
    const amendment = {
      target: wrong.id,
      field: 'value',
      from: typed,
      to: right,
      reason: 'mistyped',
    } as const;
    return [wrong, draft('amendment', amendment, start + 120_000 + n * 1000)];
  };
  const beans = {
    food,
    name: 'Pit beans',
    name_es: null,
    class: 'plant',
    counted: 'not_counted',
    sealed_commercial: false,
    note: null,
    active: true,
  } as const;
  const pan = { batch, name: 'BN', food, pieces: null, made: 'new', source: [], note: null } as const;
  const held = { batch, pieces: null, step: 'hot_hold', equipment: visitor.equipment, details: {} } as const;
  return {
    begin: [
      draft('food', beans, start),
      draft('batch', { ...pan, source: [] }, start),
      draft('step', held, start),
    ],
    posts: [
      ...Array.from({ length: looks }, (_, n) => [look(n)]),
      ...Array.from({ length: 10 }, (_, n) => corrected(looks + n)),
      Array.from({ length: 5 }, (_, n) => look(looks + 10 + n)),
    ],
  };
}
