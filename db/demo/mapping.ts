import { TZDate } from '@date-fns/tz';
import { addDays } from 'date-fns';
import { inZone, msOf } from '#shared/time.ts';
import type { Night } from './night.ts';

/** Ids and instants of the demo file → ids and instants in the book. */
export class Mapping {
  readonly ids = new Map<string, string>();
  readonly zone: string;
  readonly #shiftDays: number;
  readonly #newId: (ms: number) => string;

  /**
   * @param shiftDays whole local days by which every instant moves; the time on the wall stays
   * @param newId makes one UUID v7 for an instant (ms)
   */
  constructor(night: Night, shiftDays: number, newId: (ms: number) => string) {
    this.zone = night.site.zone;
    this.#shiftDays = shiftDays;
    this.#newId = newId;
    const first = msOf(this.at(night.events[0]?.at ?? night.site.as_of));
    for (const thing of [night.people, night.equipment, night.probes, night.foods, night.plan].flat()) {
      this.ids.set(thing.id, newId(first));
    }
    for (const event of night.events) {
      const ms = msOf(this.at(event.entered_at));
      this.ids.set(event.id, newId(ms));
      if (event.kind === 'batch') this.ids.set(event.batch, newId(ms));
      if (event.kind === 'round') this.ids.set(event.round, newId(ms));
    }
  }

  /** @throws Error when the file names something that it does not define: the file is wrong, not the kitchen */
  id(old: string): string {
    const found = this.ids.get(old);
    if (!found) throw new Error(`demo night: "${old}" is named but nowhere defined`);
    return found;
  }

  idOrNull(old: string | null | undefined): string | null {
    return old == null ? null : this.id(old);
  }

  freshId(at: string): string {
    return this.#newId(msOf(at));
  }

  at(old: string): string {
    return inZone(addDays(new TZDate(msOf(old), this.zone), this.#shiftDays).getTime(), this.zone);
  }

  atOrNull(old: string | null | undefined): string | null {
    return old == null ? null : this.at(old);
  }

  /** A local date, moved by the same days. */
  day(old: string): string {
    return inZone(
      addDays(new TZDate(`${old}T12:00:00Z`, this.zone), this.#shiftDays).getTime(),
      this.zone,
    ).slice(0, 10);
  }
}
