import type { Body, Entry, Kind } from '#shared/entries/entry.ts';
import type { PhoneKitchen } from './phone-page.ts';

const began = Date.parse('2026-05-08T17:00:00Z');
const minute = 60_000;

/** Entries of an invented kitchen, written tersely: `after` minutes after 17:00. */
class Written {
  readonly entries: Entry[] = [];

  add<K extends Kind>(kind: K, after: number, body: Body<K>): this {
    const at = new Date(began + after * minute).toISOString();
    const seq = this.entries.length + 1;
    this.entries.push({
      id: `${kind}-${seq}`,
      kind,
      version: 1,
      at,
      entered_at: at,
      received_at: at,
      by: 'cook',
      site: 'site',
      seq,
      known: 'secret',
      device: 'phone',
      body,
    } as Entry);
    return this;
  }

  begin(kind: 'heated_cabinet' | 'cooler', food: Pick<Body<'food'>, 'class' | 'counted'>): this {
    const house = {
      reheat_may_return: false,
      reheat_within_min: 120,
      decides: 'manager',
      decide_within_min: 30,
    } as const;
    return this.add('site', 0, {
      name: 'Bench',
      address: '',
      zone: 'UTC',
      altitude_m: 0,
      unit: 'degF',
      clock: '24',
      language: 'en',
      day_starts: '04:00',
      closed_weekdays: [],
      closed_on: [],
      profile: 'fda_2022',
      late_after_min: 15,
      odd_above: 250,
      paper: 'letter',
      house,
    })
      .add('equipment', 0, {
        equipment: 'place',
        name: 'Place',
        kind,
        set: null,
        order: 0,
        note: null,
        active: true,
      })
      .add('food', 0, {
        food: 'food',
        name: 'Food',
        name_es: 'Comida',
        sealed_commercial: false,
        note: '',
        active: true,
        ...food,
      })
      .add('batch', 0, {
        batch: 'A',
        name: 'A',
        food: 'food',
        pieces: 1,
        made: 'new',
        source: [],
        note: null,
      });
  }

  read(after: number, spot: Body<'reading'>['spot'], value: number, source: 'hand' | 'logger'): this {
    return this.add('reading', after, {
      batch: 'A',
      piece: 1,
      equipment: 'place',
      spot,
      typed: String(value),
      value,
      unit: 'degF',
      probe: null,
      held_s: null,
      round: null,
      source,
      correction: null,
      late_reason: null,
    });
  }
}

/** A pan of pulled pork in a walk-in with eight looks in four hours. */
export function cooling(): PhoneKitchen {
  const written = new Written().begin('cooler', { class: 'pulled_or_chopped', counted: 'pans' });
  written.add('step', 0, {
    batch: 'A',
    pieces: null,
    step: 'cooling',
    equipment: 'place',
    details: { pan_depth_in: 2, covered: 'loosely', cooler_F: 38 },
  });
  const looks = [138, 126, 112.5, 100.5, 90.5, 82, 75, 64];
  for (const [i, value] of looks.entries())
    written.read([0, 30, 60, 90, 120, 150, 180, 240][i] ?? 0, 'core', value, 'hand');
  return { entries: written.entries, asOf: began + 245 * minute, batch: 'A' };
}

/** A brisket held for twenty hours with a sensor in its core that reads each minute; twice a day it sinks and comes back. */
export function hold(): PhoneKitchen {
  const written = new Written().begin('heated_cabinet', { class: 'beef_whole', counted: 'pieces' });
  written.add('step', 0, {
    batch: 'A',
    pieces: null,
    step: 'hot_hold',
    equipment: 'place',
    details: { piece_in: [4, 8, 14] },
  });
  for (let after = 0; after <= 20 * 60; after += 1)
    written.read(
      after,
      'core',
      Math.round((145 + 8 * Math.sin((after / 720) * 2 * Math.PI)) * 10) / 10,
      'logger',
    );
  return { entries: written.entries, asOf: began + 20 * 60 * minute, batch: 'A' };
}
