import { minutesBetween, msOf, wallClock } from '#shared/time.ts';
import type { Unit } from '#shared/units.ts';
import type { Language } from '#shared/words/messages.ts';
import type { BatchDoc, CanonicalDay, DeviationDoc, ReadingDoc } from './day-schema.ts';
import type { Say } from './sheet-words.ts';

/** How one sheet says names, times, figures and lengths: from the day's own document, in one language. */
export class SheetNames {
  readonly day: CanonicalDay;
  readonly say: Say;
  readonly language: Language;
  readonly #people: Map<string, CanonicalDay['people'][number]>;
  readonly #equipment: Map<string, string>;
  readonly #thermometers: Map<string, CanonicalDay['thermometers'][number]>;
  readonly #batches: Map<string, BatchDoc>;

  constructor(day: CanonicalDay, say: Say, language: Language) {
    this.day = day;
    this.say = say;
    this.language = language;
    this.#people = new Map(day.people.map((one) => [one.id, one]));
    this.#equipment = new Map(day.equipment.map((one) => [one.id, one.name]));
    this.#thermometers = new Map(day.thermometers.map((one) => [one.id, one]));
    this.#batches = new Map(day.batches.map((one) => [one.id, one]));
  }

  /** The initials of a hand; "?" for one whom the book does not know. */
  hand(id: string | null): string {
    return (id !== null && this.#people.get(id)?.initials) || '?';
  }

  person(id: string | null): string {
    return (id !== null && this.#people.get(id)?.name) || this.say('common.not_known');
  }

  place(id: string | null): string {
    return (id !== null && this.#equipment.get(id)) || this.say('sheet.no_place');
  }

  /** A thermometer by its name, with its colour in words where the name does not say it. */
  thermometer(id: string | null): string {
    if (id === null) return this.say('sheet.no_thermometer');
    const one = this.#thermometers.get(id);
    if (!one) return this.say('common.not_known');
    const colour = this.say(`common.colour.${one.colour}`);
    return one.name.toLowerCase().includes(colour.toLowerCase()) ? one.name : `${one.name}, ${colour}`;
  }

  batch(id: string | null): string {
    return (id !== null && this.#batches.get(id)?.name) || this.say('sheet.no_batch');
  }

  food(batch: BatchDoc): string {
    const { food } = batch;
    if (!food) return this.say('common.food_class.unknown');
    return (this.language === 'es' && food.name_es) || food.name;
  }

  /** The clock on the kitchen's wall; with its date where the instant is not of the day. */
  time(at: string | null): string {
    if (at === null) return this.say('common.not_known');
    const ms = msOf(at);
    const clock = wallClock(ms, this.day.site.zone, this.day.site.clock);
    return ms < msOf(this.day.from) || ms > msOf(this.day.to) ? `${this.shortDate(at)} ${clock}` : clock;
  }

  /** Date and time, always both. */
  moment(at: string): string {
    return `${this.shortDate(at)} ${wallClock(msOf(at), this.day.site.zone, this.day.site.clock)}`;
  }

  shortDate(at: string): string {
    return this.#date(at, { day: 'numeric', month: 'short' });
  }

  longDate(at: string): string {
    return this.#date(at, { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' });
  }

  /** A calendar day that has no time: "22 Oct". */
  dayOfMonth(day: string): string {
    return this.#date(`${day}T12:00:00Z`, { day: 'numeric', month: 'short' }, 'UTC');
  }

  #date(at: string, options: Intl.DateTimeFormatOptions, zone = this.day.site.zone): string {
    // British order for English: "16 Oct" cannot be read as a month and a day the other way round.
    const locale = this.language === 'en' ? 'en-GB' : 'es-US';
    return new Intl.DateTimeFormat(locale, { ...options, timeZone: zone }).format(msOf(at));
  }

  figure(value: number | string, unit: Unit): string {
    return `${value} ${this.say(`common.unit.${unit}`)}`;
  }

  spot(reading: Pick<ReadingDoc, 'spot'>): string {
    return reading.spot === null ? this.say('sheet.spot_not_said') : this.say(`common.spot.${reading.spot}`);
  }

  /** A length in whole minutes: "at most" is rounded up and "at least" down, so that neither says too much. */
  length(min: number | null, round: 'up' | 'down' = 'up'): string {
    if (min === null) return this.say('common.not_known');
    const whole = round === 'up' ? Math.ceil(min) : Math.floor(min);
    const h = Math.floor(whole / 60);
    const m = whole % 60;
    return h === 0 ? this.say('common.minutes', { m }) : this.say('common.hours_minutes', { h, m });
  }

  between(from: string, to: string): string {
    return this.length(minutesBetween(msOf(from), msOf(to)));
  }

  /** "pieces 1–4, 7" */
  pieces(pieces: readonly number[] | null): string {
    if (pieces === null) return this.say('sheet.whole_batch');
    return this.say('sheet.pieces', { count: pieces.length, numbers: ranges(pieces) });
  }

  limit(limit: { value: number; unit: Unit; comparison: string }): string {
    return this.say(`sheet.limit.${limit.comparison}`, { figure: this.figure(limit.value, limit.unit) });
  }

  /** What stands beside a reading: typed late, suspect, corrected from, seconds held. */
  readingNote(reading: ReadingDoc): string {
    const { say } = this;
    return [
      reading.late ? say('sheet.note_late', { time: this.time(reading.entered_at) }) : null,
      reading.suspect ? say('parts.mark.suspect') : null,
      reading.amended ? say('sheet.note_amended', { from: reading.amended.from }) : null,
      reading.held_s === null ? null : say('sheet.note_held', { seconds: reading.held_s }),
      reading.correction === null ? null : say('sheet.note_correction', { degrees: reading.correction }),
      reading.source === 'logger' ? say('sheet.note_logger') : null,
    ]
      .filter((part) => part !== null)
      .join(', ');
  }

  /** One verdict that the record leaves open to doubt, with its reasons. */
  notShown(one: CanonicalDay['not_shown'][number]): string {
    const reasons = one.reasons.map((reason) => this.say(`sheet.reason.${reason}`)).join('; ');
    return this.say('sheet.not_shown_line', {
      batch: this.batch(one.batch),
      pieces: this.pieces(one.pieces),
      step: this.say(`common.step.${one.step}`),
      stage: this.say(`sheet.stage.${one.stage}`),
      section: one.section,
      reasons: reasons === '' ? this.say('sheet.key.not_shown') : reasons,
    });
  }

  end(end: DeviationDoc['ends'][number]): string {
    const piece =
      end.piece === null ? this.say('sheet.whole_batch') : this.say('common.piece', { number: end.piece });
    if (end.end === null) return this.say('sheet.end.open', { piece });
    return this.say(`sheet.end.${end.end}`, { piece, time: this.time(end.at), hand: this.hand(end.by) });
  }
}

/** Numbers with their runs drawn together: 1, 2, 3, 7 → "1–3, 7". */
export function ranges(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  const runs: [number, number][] = [];
  for (const n of sorted) {
    const last = runs.at(-1);
    if (last && last[1] === n - 1) last[1] = n;
    else runs.push([n, n]);
  }
  return runs.map(([a, b]) => (a === b ? `${a}` : b === a + 1 ? `${a}, ${b}` : `${a}–${b}`)).join(', ');
}
