import { TZDate } from '@date-fns/tz';
import type { JudgedRun } from '#lib/fold/book.ts';
import { foldBook } from '#lib/fold/fold-book.ts';
import type { Body, Entry, Kind } from '#shared/entries/entry.ts';
import type { FoodClass } from '#shared/entries/food.ts';

export const zone = 'America/Chicago';

/** A moment on the kitchen's wall, "16 21:00" = 16 October 2026 (32 is 1 November), in ms. */
export function wall(moment: string): number {
  const [, day = '', hour = '', minute = ''] = /^(\d+) (\d\d):(\d\d)$/.exec(moment) ?? [];
  return new TZDate(2026, 9, Number(day), Number(hour), Number(minute), zone).getTime();
}

/** Some weeks of a kitchen's cold food, written tersely; ids are readable names. */
export class Weeks {
  readonly entries: Entry[] = [];

  constructor(more: { profile?: string; reheat_may_return?: boolean } = {}) {
    this.add('site', '1 00:00', {
      name: 'Test kitchen',
      address: null,
      zone,
      altitude_m: null,
      unit: 'degF',
      clock: '24',
      language: 'en',
      day_starts: '04:00',
      closed_weekdays: [],
      closed_on: [],
      profile: more.profile ?? 'fda_2022',
      late_after_min: 15,
      odd_above: null,
      paper: 'letter',
      house: {
        reheat_may_return: more.reheat_may_return ?? false,
        reheat_within_min: null,
        decides: 'manager',
        decide_within_min: 30,
      },
    });
    for (const [equipment, kind] of [
      ['oven', 'oven'],
      ['walkin', 'cooler'],
      ['reachin', 'cooler'],
      ['freezer', 'freezer'],
    ] as const)
      this.add('equipment', '1 00:00', {
        equipment,
        name: equipment,
        kind,
        set: null,
        order: 1,
        note: null,
        active: true,
      });
  }

  add<K extends Kind>(kind: K, at: string, body: Body<K>): this {
    const seq = this.entries.length + 1;
    const iso = new Date(wall(at)).toISOString();
    this.entries.push({
      id: `${kind}-${seq}`,
      kind,
      version: 1,
      at: iso,
      entered_at: iso,
      received_at: iso,
      by: 'cook',
      site: 'site',
      seq,
      known: 'secret',
      device: 'phone',
      body,
    } as Entry);
    return this;
  }

  /** A batch of a food of this class; `from` names the batches that it was made of. */
  batch(
    at: string,
    id: string,
    foodClass: FoodClass,
    more: { from?: string[]; sealed?: boolean; pieces?: number } = {},
  ): this {
    this.add('food', '1 00:00', {
      food: `food-${id}`,
      name: id,
      name_es: null,
      class: foodClass,
      counted: 'pans',
      sealed_commercial: more.sealed ?? false,
      note: null,
      active: true,
    });
    return this.add('batch', at, {
      batch: id,
      name: id,
      food: `food-${id}`,
      pieces: more.pieces ?? null,
      made: more.from === undefined ? 'new' : 'join',
      source: (more.from ?? []).map((batch) => ({ batch, pieces: null, words: null })),
      note: null,
    });
  }

  step(
    at: string,
    batch: string,
    step: Body<'step'>['step'],
    equipment: string | null,
    details: Body<'step'>['details'] = {},
    pieces: number[] | null = null,
  ): this {
    return this.add('step', at, { batch, pieces, step, equipment, details });
  }

  /** Cooked, cooled and put away, all of one evening. */
  cooked(day: number, id: string, from = '14:00', to = '17:00'): this {
    return this.batch(`${day} ${from}`, id, 'plant')
      .step(`${day} ${from}`, id, 'cook', 'oven')
      .step(`${day} ${to}`, id, 'cooling', 'walkin')
      .step(`${day} 21:00`, id, 'cold_hold', 'walkin');
  }

  book(at: string) {
    return foldBook(this.entries, wall(at));
  }

  /** The run in which a batch is at a moment. */
  run(at: string, batch: string): JudgedRun | undefined {
    return this.book(at).batches.get(batch)?.runs.at(-1);
  }

  /** Its date mark in short: the verdict and the last day of October, "kept 22". */
  mark(at: string, batch: string): string {
    const mark = this.run(at, batch)?.stages.date_mark;
    const day = mark?.last_day?.slice(5) ?? '–';
    return [mark?.verdict, day, ...(mark?.reasons ?? [])].join(' ');
  }
}
