import type { Body, Draft, Kind } from '#shared/entries/entry.ts';
import { stepDetails } from '#shared/entries/step.ts';
import type { Mapping } from './mapping.ts';
import type {
  NightAction,
  NightBatch,
  NightDeviation,
  NightEvent,
  NightReading,
  NightRound,
  NightStep,
} from './night.ts';
import { pieceSizes } from './sizes.ts';

/** A signature's hash before the day that it covers has been computed. */
export const HASH_TO_COME = '0'.repeat(64);

/** One event of the demo night as a draft. What a kind has no member for is kept in its words. */
export function eventDraft(event: NightEvent, map: Mapping): Draft {
  const draft = <K extends Kind>(kind: K, body: Body<K>): Draft =>
    ({
      id: map.id(event.id),
      kind,
      version: 1,
      at: map.at(event.at),
      entered_at: map.at(event.entered_at),
      by: map.id(event.by),
      body,
    }) as Draft;
  switch (event.kind) {
    case 'batch':
      return draft('batch', batchBody(event, map));
    case 'step':
      return draft('step', stepBody(event, map));
    case 'reading':
      return draft('reading', readingBody(event, map));
    case 'probe_check':
      return draft('probe_check', {
        probe: map.id(event.probe),
        bath: 'ice',
        typed: event.typed,
        value: event.value,
        unit: event.unit,
        expected: event.expected,
        accuracy: event.allowed_error,
        note: null,
      });
    case 'round':
      return draft('round', roundBody(event, map));
    case 'equipment_off':
      return draft('equipment_off', {
        equipment: map.id(event.equipment),
        reason: event.reason,
        since_basis: event.since_basis ?? null,
        text: event.text ?? null,
      });
    case 'equipment_on':
      return draft('equipment_on', {
        equipment: map.id(event.equipment),
        reason: event.reason,
        text: event.text ?? null,
      });
    case 'deviation':
      return draft('deviation', deviationBody(event, map));
    case 'corrective_action':
      return draft('corrective_action', actionBody(event, map));
    case 'amendment':
      return draft('amendment', {
        target: map.id(event.target),
        field: event.field,
        from: event.from,
        to: event.to,
        reason: event.reason,
      });
    case 'note':
      return draft('note', {
        text: event.text,
        lang: event.lang,
        batch: map.idOrNull(event.batch),
        piece: null,
        equipment: null,
        probe: map.idOrNull(event.probe),
        round: null,
        could_not: null,
      });
    case 'handover':
      return draft('handover', {
        from: map.id(event.from),
        to: map.id(event.to),
        open_items: event.open_items,
        text: event.text,
        lang: event.lang,
      });
    case 'signature':
      return draft('signature', {
        day: map.day(event.sheet),
        revision: 1,
        from: map.at(event.covers.from),
        to: map.at(event.covers.to),
        name: 'Delia Marchbanks',
        role: 'manager',
        meaning: event.meaning,
        open_items: event.open_items.map(({ ref, decision }) => ({ ref: map.id(ref), decision })),
        hash: HASH_TO_COME,
        head: null,
      });
  }
}

function batchBody(event: NightBatch, map: Mapping): Body<'batch'> {
  const source = (event.source ?? []).map((from) => ({
    batch: map.idOrNull(from.batch),
    pieces: from.pieces ?? null,
    words: from.other_sheet ?? null,
  }));
  return {
    batch: map.id(event.batch),
    name: event.batch,
    food: map.id(event.food),
    pieces: event.pieces,
    made: source.some((from) => from.batch !== null) ? 'cut' : 'new',
    source,
    note: event.note,
  };
}

/** Dates and ids among the details move with the night; everything else stays as the cook wrote it. */
function stepBody(event: NightStep, map: Mapping): Body<'step'> {
  const details: Record<string, unknown> = { ...event.details };
  for (const key of ['date_mark', 'discard_by']) {
    const day = details[key];
    if (typeof day === 'string') details[key] = map.day(day);
  }
  const size = pieceSizes[event.batch];
  if (size !== undefined && (event.step === 'rest' || event.step === 'hot_hold')) details.piece_in = size;
  const { marked_discard_at: marked, deviation, weight_lb: weight, amount_gal: gallons } = event.details;
  if (typeof marked === 'string') details.marked_discard_at = map.at(marked);
  if (typeof deviation === 'string') details.deviation = map.id(deviation);
  if (typeof weight === 'number') details.amount = `${weight} lb`;
  if (typeof gallons === 'number') details.amount = `${gallons} gal`;
  return {
    batch: map.id(event.batch),
    pieces: event.pieces,
    step: event.step,
    equipment: map.idOrNull(event.equipment),
    details: stepDetails.parse(details),
  };
}

function readingBody(event: NightReading, map: Mapping): Body<'reading'> {
  return {
    batch: map.idOrNull(event.batch),
    piece: event.piece,
    equipment: map.idOrNull(event.equipment),
    spot: event.spot,
    typed: event.typed,
    value: event.value,
    unit: event.unit,
    probe: map.id(event.probe),
    held_s: event.held_s,
    round: map.idOrNull(event.round),
    source: 'hand',
    correction: null,
    late_reason: event.late_reason ?? null,
  };
}

function roundBody(event: NightRound, map: Mapping): Body<'round'> {
  return {
    round: map.id(event.round),
    planned_at: map.at(event.planned_at),
    status: event.status,
    equipment: event.equipment.map((id) => map.id(id)),
    ended_at: map.atOrNull(event.ended_at),
    reason: event.reason ?? null,
    note: event.note ?? event.text ?? null,
  };
}

function deviationBody(event: NightDeviation, map: Mapping): Body<'deviation'> {
  return {
    batch: map.idOrNull(event.batch),
    pieces: event.pieces,
    step: event.step,
    equipment: map.idOrNull(event.equipment),
    probe: map.idOrNull(event.probe),
    limit: {
      section: event.limit.section,
      value: event.limit.value,
      unit: event.limit.unit,
      within_min: event.limit.within_min ?? null,
    },
    found: map.id(event.found),
    last_good: map.idOrNull(event.last_good),
    since: map.atOrNull(event.since),
    since_basis: event.since_basis,
    text: event.text,
    lang: event.lang,
  };
}

/** "phone call 03:20" and "told by phone 04:52" are by phone; the words stay as written. */
function decidedVia(how: string): Body<'corrective_action'>['decided_via'] {
  if (how.includes('phone')) return 'phone';
  return how === 'in person' ? 'in_person' : 'own_duty';
}

const amountIn = (disposition: string): string | null =>
  /\d+(\.\d+)? (lb|gallons)/.exec(disposition)?.[0] ?? null;

function actionBody(event: NightAction, map: Mapping): Body<'corrective_action'> {
  return {
    deviation: map.id(event.deviation),
    batch: map.idOrNull(event.batch),
    pieces: event.pieces,
    action: event.action,
    decided_by: map.id(event.decided_by),
    decided_via: decidedVia(event.decided_how),
    decided_words: event.decided_how,
    condition: event.condition,
    disposition: event.disposition,
    amount: amountIn(event.disposition),
    cause: null,
    text: event.text,
    lang: event.lang,
  };
}
