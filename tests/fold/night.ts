import { type FoldOptions, foldBook } from '#lib/fold/fold-book.ts';
import type { Body, Entry, Kind } from '#shared/entries/entry.ts';

/**
 * A small night, written tersely: `night().batch('17:00', 'A', 3).step('17:05', 'A', 'hot_hold', 'cab1')`.
 * Times are of one night in UTC: "17:00" to "23:59" are the evening, "00:00" to "16:59" the day after. Ids are
 * readable names; the folds ask nothing of them.
 */
export const ms = (clock: string): number => {
  const day = clock >= '17:00' ? '08' : '09';
  return Date.parse(`2026-05-${day}T${clock.length === 5 ? `${clock}:00` : clock}Z`);
};
const iso = (clock: string): string => new Date(ms(clock)).toISOString();

const house = {
  reheat_may_return: false,
  reheat_within_min: 120,
  decides: 'manager',
  decide_within_min: 30,
} as const;

export class Night {
  readonly entries: Entry[] = [];

  add<K extends Kind>(kind: K, clock: string, body: Body<K>, more: Partial<Entry> = {}): this {
    const seq = this.entries.length + 1;
    this.entries.push({
      id: `${kind}-${seq}`,
      kind,
      version: 1,
      at: iso(clock),
      entered_at: iso(clock),
      received_at: iso(clock),
      by: 'cook',
      site: 'site',
      seq,
      known: 'secret',
      device: 'phone',
      body,
      ...more,
    } as Entry);
    return this;
  }

  /** Id of the entry written last. */
  get last(): string {
    return this.entries.at(-1)?.id ?? '';
  }

  batch(
    clock: string,
    id: string,
    pieces: number | null,
    food = 'brisket',
    more: Partial<Body<'batch'>> = {},
  ): this {
    return this.add('batch', clock, {
      batch: id,
      name: id,
      food,
      pieces,
      made: 'new',
      source: [],
      note: null,
      ...more,
    });
  }

  step(
    clock: string,
    batch: string,
    step: Body<'step'>['step'],
    equipment: string | null,
    pieces: number[] | null = null,
    details: Body<'step'>['details'] = {},
  ): this {
    return this.add('step', clock, { batch, pieces, step, equipment, details });
  }

  gone(
    clock: string,
    batch: string,
    pieces: number[] | null,
    reason: 'sold' | 'discarded' | 'used_up' = 'sold',
  ): this {
    return this.step(clock, batch, 'gone', null, pieces, { reason });
  }

  /** A look at food; `at` "A3 edge" names batch, piece and spot, "A coldest" no piece. */
  read(
    clock: string,
    at: string,
    typed: string,
    more: Partial<Body<'reading'>> = {},
    entry: Partial<Entry> = {},
  ): this {
    const [, batch = '', piece = '', spot = ''] = /^([A-Z]+)(\d*) (\w+)$/.exec(at) ?? [];
    return this.add(
      'reading',
      clock,
      {
        batch,
        piece: piece === '' ? null : Number(piece),
        equipment: null,
        spot: spot as Body<'reading'>['spot'],
        typed,
        value: Number(typed),
        unit: 'degF',
        probe: 'red',
        held_s: null,
        round: null,
        source: 'hand',
        correction: null,
        late_reason: null,
        ...more,
      },
      entry,
    );
  }

  air(clock: string, equipment: string, typed: string): this {
    return this.add('reading', clock, {
      batch: null,
      piece: null,
      equipment,
      spot: 'air',
      typed,
      value: Number(typed),
      unit: 'degF',
      probe: 'red',
      held_s: null,
      round: null,
      source: 'hand',
      correction: null,
      late_reason: null,
    });
  }

  ice(clock: string, probe: string, typed: string): this {
    return this.add('probe_check', clock, {
      probe,
      bath: 'ice',
      typed,
      value: Number(typed),
      unit: 'degF',
      expected: 32,
      accuracy: null,
      note: null,
    });
  }

  amend(clock: string, target: string, field: Body<'amendment'>['field'], to: string): this {
    return this.add('amendment', clock, { target, field, from: '', to, reason: 'meant otherwise' });
  }

  deviation(
    clock: string,
    batch: string | null,
    pieces: number[] | null,
    more: Partial<Body<'deviation'>> = {},
  ): this {
    return this.add('deviation', clock, {
      batch,
      pieces,
      step: null,
      equipment: null,
      probe: null,
      limit: null,
      found: null,
      last_good: null,
      since: null,
      since_basis: null,
      text: 'found',
      lang: 'en',
      ...more,
    });
  }

  act(
    clock: string,
    deviation: string,
    action: Body<'corrective_action'>['action'],
    more: Partial<Body<'corrective_action'>> = {},
  ): this {
    return this.add('corrective_action', clock, {
      deviation,
      batch: null,
      pieces: null,
      action,
      decided_by: 'boss',
      decided_via: 'in_person',
      decided_words: null,
      condition: null,
      disposition: null,
      amount: null,
      cause: null,
      text: '',
      lang: 'en',
      ...more,
    });
  }

  decide(
    clock: string,
    deviation: string,
    decision: Body<'decision'>['decision'],
    more: Partial<Body<'decision'>> = {},
    entry: Partial<Entry> = {},
  ): this {
    return this.add(
      'decision',
      clock,
      {
        deviation,
        batch: null,
        pieces: null,
        decision,
        confirms: null,
        decided_by: 'boss',
        decided_via: 'in_person',
        reason: 'second thermometer showed the first one wrong',
        ...more,
      },
      entry,
    );
  }

  plan(step: Body<'plan'>['step'], equipment: string[], more: Partial<Body<'plan'>>): this {
    return this.add('plan', '17:00', {
      plan: `plan-${step}-${equipment.join()}`,
      step,
      equipment,
      every_min: null,
      at_most_min: null,
      checkpoints_min: [],
      looks: 'every_piece',
      spots: [],
      note: null,
      active: true,
      ...more,
    });
  }

  site(rules: Partial<Body<'site'>['house']> = {}): this {
    return this.add('site', '17:00', {
      name: 'Test kitchen',
      address: null,
      zone: 'UTC',
      altitude_m: null,
      unit: 'degF',
      clock: '24',
      language: 'en',
      day_starts: '17:00',
      closed_weekdays: [],
      closed_on: [],
      profile: 'fda_2022',
      late_after_min: 15,
      odd_above: null,
      paper: 'letter',
      house: { ...house, ...rules },
    });
  }

  book(at: string | FoldOptions) {
    return foldBook(this.entries, typeof at === 'string' ? { asOf: ms(at), knownUntil: ms(at) } : at);
  }
}

const person = (id: string, role: Body<'person'>['role']): Body<'person'> => ({
  person: id,
  name: id,
  initials: id.slice(0, 2),
  role,
  title: null,
  language: 'en',
  phone: null,
  on_call: role === 'manager',
  active: true,
});

const places: [string, Body<'equipment'>['kind']][] = [
  ['cab1', 'heated_cabinet'],
  ['cab2', 'heated_cabinet'],
  ['pit', 'pit'],
  ['rack', 'rack'],
  ['steam', 'steam_table'],
  ['ice', 'ice_bath'],
  ['walkin', 'cooler'],
  ['oven', 'oven'],
];

const foods: [string, Body<'food'>['class'], Body<'food'>['counted']][] = [
  ['brisket', 'intact_roast', 'pieces'],
  ['turkey', 'poultry', 'pieces'],
  ['pulled', 'pulled_or_chopped', 'pans'],
  ['beans', 'plant', 'not_counted'],
  ['sausage', 'sausage_cooked', 'not_counted'],
];

/** A kitchen that is set up: cook, lead "yes" and manager "boss"; eight places; thermometers red and blue. */
export function night(rules: Partial<Body<'site'>['house']> = {}): Night {
  const made = new Night().site(rules);
  made.add('person', '17:00', person('cook', 'crew'));
  made.add('person', '17:00', person('yes', 'lead'));
  made.add('person', '17:00', person('boss', 'manager'));
  places.forEach(([equipment, kind], order) => {
    made.add('equipment', '17:00', {
      equipment,
      name: equipment,
      kind,
      set: null,
      order,
      note: null,
      active: true,
    });
  });
  for (const probe of ['red', 'blue'] as const)
    made.add('probe', '17:00', {
      probe,
      name: probe,
      colour: probe,
      type: null,
      scale: 'degF',
      unit: 'degF',
      step: 0.1,
      accuracy: null,
      home: null,
      active: true,
    });
  for (const [food, foodClass, counted] of foods)
    made.add('food', '17:00', {
      food,
      name: food,
      name_es: null,
      class: foodClass,
      counted,
      sealed_commercial: food === 'sausage',
      note: null,
      active: true,
    });
  return made;
}
