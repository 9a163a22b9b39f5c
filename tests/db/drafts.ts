import { v7 } from 'uuid';
import type { Body, DraftOf, Kind, Known } from '#shared/entries/entry.ts';
import { versions } from '#shared/entries/versions.ts';
import { isoOf, msOf } from '#shared/time.ts';

/** An invented kitchen for the tests of the ledger. */
export const cook = '01991111-0000-7000-8000-000000000001';
export const tablet = '01992222-0000-7000-8000-000000000001';
export const brisket = '01993333-0000-7000-8000-000000000001';

/** 2026-10-16 21:00 in UTC. */
export const evening = msOf('2026-10-16T21:00:00Z');
export const clock = () => evening + 60_000;
export const minutes = (n: number) => n * 60_000;

export const hand = { device: tablet, knownOf: (): Known => 'secret' };

export function draft<K extends Kind>(kind: K, body: Body<K>, at = evening): DraftOf<K> {
  return { id: v7(), kind, version: versions[kind], at: isoOf(at), entered_at: isoOf(at), by: cook, body };
}

export const site = (name = 'Copper Hollow') =>
  draft('site', {
    name,
    address: null,
    zone: 'America/Chicago',
    altitude_m: null,
    unit: 'degF',
    clock: '24',
    language: 'en',
    day_starts: '04:00',
    closed_weekdays: [],
    closed_on: [],
    profile: 'fda_2022',
    late_after_min: 15,
    odd_above: null,
    paper: 'letter',
    house: { reheat_may_return: false, reheat_within_min: null, decides: 'manager', decide_within_min: null },
  });

export const batchOf = (batch: string, pieces: number | null, at = evening) =>
  draft('batch', { batch, name: 'BR-A', food: brisket, pieces, made: 'new', source: [], note: null }, at);

type StepBody = Body<'step'>;
export const step = (batch: string, name: StepBody['step'], at = evening, pieces: number[] | null = null) =>
  draft('step', { batch, pieces, step: name, equipment: null, details: {} }, at);

export const reading = (
  batch: string | null,
  typed: string,
  at = evening,
  more: Partial<Body<'reading'>> = {},
) =>
  draft(
    'reading',
    {
      batch,
      piece: null,
      equipment: null,
      spot: null,
      typed,
      value: Number(typed),
      unit: 'degF',
      probe: null,
      held_s: null,
      round: null,
      source: 'hand',
      correction: null,
      late_reason: null,
      ...more,
    },
    at,
  );

export const amendment = (target: string, field: Body<'amendment'>['field'], to: string, at = evening) =>
  draft('amendment', { target, field, from: '', to, reason: 'mistyped' }, at);
