import { type MarkedFrom, comesRaw as rawClasses } from '#lib/judge/date-mark.ts';
import type { Body } from '#shared/entries/entry.ts';
import { localDate, msOf } from '#shared/time.ts';
import type { Kitchen, Member, Run } from './book.ts';
import type { LocalDays } from './local-days.ts';

/** What the record shows of a piece's day 1 and of the days on which its count stood still. */
export type Marked = MarkedFrom;

type Past = Pick<Run, 'step' | 'members' | 'places'>;
type Stay = { run: Past; member: Member };

export type MarkSources = {
  kitchen: Pick<Kitchen, 'equipment'>;
  food: Body<'food'> | null;
  made: Body<'batch'>['made'];
  /** What the pieces that this batch was made of bring along; [] = made of nothing that is in the book. */
  madeOf: readonly Marked[];
  /** Some of what it was made of is known in words only. */
  madeOfUnknown: boolean;
  days: LocalDays;
};

const earlier = (a: string | null, b: string | null): string | null =>
  a === null || b === null ? (a ?? b) : a < b ? a : b;

/** Where one piece was so far, in order of time; a pan that came out of a kettle was in it. */
function staysOf(piece: number | null, runs: readonly Past[], from: number): Stay[] {
  const own = runs.flatMap((run) =>
    run.members
      .filter((member) => member.from <= from && (member.piece === piece || member.piece === null))
      .map((member) => ({ run, member })),
  );
  return own.sort((a, b) => a.member.from - b.member.from);
}

/** Days in a freezer, by the places of its stays. Looks may show that it was cold, no look shows that it was frozen. */
function frozenIn(stays: readonly Stay[], at: number, { kitchen, days }: MarkSources): Marked['frozen'] {
  return stays.flatMap(({ run, member }) =>
    run.places.flatMap((place, index) => {
      const kind = place.equipment === null ? undefined : kitchen.equipment.get(place.equipment)?.kind;
      if (kind !== 'freezer') return [];
      const from = Math.max(place.at, member.from);
      const ends = [run.places[index + 1]?.at, member.until ?? undefined].filter((end) => end !== undefined);
      const to = Math.min(...ends, Number.POSITIVE_INFINITY);
      if (from > at || to <= from) return [];
      return [[days.of(from), to <= at ? days.of(to) : null] as const];
    }),
  );
}

/** The date that somebody wrote on it: its day 1. The earliest, where several were noted. */
function notedOn(stays: readonly Stay[]): string | null {
  return stays.reduce<string | null>((found, { member: { details } }) => {
    const noted = localDate.safeParse(details.date_mark);
    return noted.success ? earlier(found, noted.data) : found;
  }, null);
}

type Bounds = Pick<Marked, 'earliest' | 'latest'>;

/** When it was made, by what it went through here. Null: the record does not show that it is ready to eat. */
function shownBy(stays: readonly Stay[], sources: MarkSources): Bounds | 'raw' | 'sealed' | null {
  const { food, days, made, madeOf } = sources;
  const [first] = stays;
  if (first === undefined) return null;
  const cook = stays.find(({ run }) => run.step === 'cook');
  if (cook !== undefined && cook.member.until !== null)
    return cookedHere(stays.slice(0, stays.indexOf(cook)), cook.member.from, cook.member.until, sources);
  if (madeOf.length > 0) return { earliest: null, latest: null };
  const left = stays.find(({ run }) => run.step !== 'cold_hold' && run.step !== 'transport')?.member;
  if (food?.sealed_commercial === true && made === 'new') {
    if (left === undefined) return 'sealed';
    return { earliest: days.of(left.from), latest: days.of(left.from) }; // opened that day: 3-501.17(B)
  }
  const fresh = stays.find(({ member }) => member.details.prepared_at !== undefined)?.member.details
    .prepared_at;
  if (fresh !== undefined) return { earliest: days.of(msOf(fresh)), latest: days.of(msOf(fresh)) };
  const isRaw = first.member.details.ready_to_eat === false;
  if (isRaw && left === undefined) return 'raw';
  const mayBeRaw = isRaw || (!saidReady(stays) && comesRaw(food));
  if (mayBeRaw && left === undefined) return null;
  // What may have lain there raw was made by the time it left the cold; anything else by the time it came in.
  const there = mayBeRaw && first.run.step === 'cold_hold' ? (left ?? first.member) : first.member;
  return { earliest: null, latest: days.of(there.from) };
}

/** Made when it came off the fire, or when it went on; unless it may have been ready before, and is older than both. */
function cookedHere(
  before: readonly Stay[],
  from: number,
  until: number,
  { food, days }: MarkSources,
): Bounds {
  const [first] = before;
  const latest = days.of(until);
  if (first === undefined) return { earliest: days.of(from), latest };
  if (saidReady(before)) return { earliest: null, latest: days.of(first.member.from) };
  const wasRaw =
    before.every(({ run }) => run.step === 'cold_hold') &&
    (comesRaw(food) || first.member.details.ready_to_eat === false);
  return { earliest: wasRaw ? days.of(from) : null, latest };
}

const comesRaw = (food: Body<'food'> | null): boolean => food === null || rawClasses.has(food.class);

const saidReady = (stays: readonly Stay[]): boolean =>
  stays.some(({ member }) => member.details.ready_to_eat === true);

/** Combined food takes the earliest date of all that went in; one that nobody knows leaves the earliest unknown. */
function combined(own: Bounds | null, { madeOf, madeOfUnknown }: MarkSources): Bounds {
  const parts: Bounds[] = [
    ...(own === null ? [] : [own]),
    ...madeOf.filter(({ outside }) => outside === null),
  ];
  const isKnown = !madeOfUnknown && parts.length > 0 && parts.every((part) => part.earliest !== null);
  return {
    earliest: isKnown ? parts.reduce<string | null>((day, part) => earlier(day, part.earliest), null) : null,
    latest: parts.reduce<string | null>((day, part) => earlier(day, part.latest), null),
  };
}

/**
 * What is known of the date mark of one piece whose stay began at `from`, by the moment `at` (ms).
 *
 * A date that somebody noted settles day 1, unless the record shows that the food was there before it: then the
 * record's own bounds stand, for a date copied from another pan makes no food younger.
 */
export function markedOf(
  piece: number | null,
  from: number,
  at: number,
  runs: readonly Past[],
  sources: MarkSources,
): Marked {
  const stays = staysOf(piece, runs, from);
  const noted = notedOn(stays);
  const own = shownBy(stays, sources);
  const parts = sources.madeOf.filter(({ outside }) => outside === null);
  const frozen = [...(parts.length === 1 ? (parts[0]?.frozen ?? []) : []), ...frozenIn(stays, at, sources)];
  if ((own === 'raw' || own === 'sealed') && noted === null)
    return { earliest: null, latest: null, frozen, outside: own };
  const cooked = typeof own === 'string' || (own?.earliest === null && own.latest === null) ? null : own;
  const bounds = combined(cooked, sources);
  const [first] = stays;
  const by = bounds.latest ?? (first === undefined ? null : sources.days.of(first.member.from));
  if (noted === null || (by !== null && noted > by)) return { ...bounds, frozen, outside: null };
  return { earliest: noted, latest: noted, frozen, outside: null };
}

/** What a piece brings along into food that is made of it at `at`: whatever stood frozen comes out that day. */
export const brought = (marked: Marked, at: number, days: LocalDays): Marked => ({
  ...marked,
  frozen: marked.frozen.map(([from, to]) => [from, to ?? days.of(at)] as const),
});
