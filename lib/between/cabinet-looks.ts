import type { Book, Look } from '#lib/fold/book.ts';
import { planOf } from '#lib/fold/plan-of.ts';
import { twoReadingRate } from '#lib/science/cooling-rate.ts';
import { driftDetect, maxCheckInterval, periodicDetect, ruleOfThree } from '#lib/science/sampling.ts';
import type { Body } from '#shared/entries/entry.ts';
import { assumed } from './assumed.ts';
import type { CabinetChart } from './cabinet-chart.ts';
import { type CabinetRecord, looksIn, runsHeld, type Side } from './cabinet-record.ts';
import { hour, readingOf } from './readings.ts';

/**
 * How often a cabinet must be looked at for a loss of heat (or cold) to be found in time, against the plan in force.
 * Class W. It supposes that the time constant of the coldest place is known, and that somebody acts on every
 * reading within `2u` of the limit. °F, hours.
 */
export type LookingOften = {
  plan: Body<'plan'> | null;
  /** The longest time between two looks that the plan allows; null = no plan, or it names none. */
  planHours: number | null;
  u: number;
  /** How long food may be beyond the limit before it is found. */
  allowed: number;
  /** What the fall is taken to start from: the reading nearest to the limit that was still good. */
  from: number | null;
  surroundings: number;
  fall: Fall | null;
  /** Null: see `lacks`. */
  interval: { tLimit: number; tAlarm: number; maxInterval: number } | null;
  lacks: 'limit' | 'readings' | 'fall' | 'near' | null;
  /** Chance that looks by the plan find one loss of heat in time; null as `interval`, or without a plan. */
  chance: number | null;
  /** Good looks since the record begins, and what they can claim at most of the share of bad ones. */
  claim: { looks: number; bad: number; share: number | null };
  /** Whether looks by the plan warn of the drift before the limit; null where no drift toward it is shown. */
  drift: { margin: number; warnLimit: number } | null;
  /** The longest time with food in it and no look, as the record has it; null = none. */
  longest: { from: number; to: number } | null;
};

/** How fast the coldest place follows the room: time constant in hours, and from what it is known. */
export type Fall = { tau: number; basis: 'trip' | 'told'; from: number; to: number; hours: number };

/** What somebody tells of a trial without heat: °F, °F, minutes. */
export type Told = { from: number; to: number; minutes: number };

const HOT_SPOTS = new Set(['edge', 'coldest', 'surface', 'air']);

export function lookingOften(
  book: Book,
  equipment: string,
  record: CabinetRecord,
  chart: CabinetChart,
  told: Told | null,
): LookingOften {
  const { side, limit, readings } = record;
  const plan = planOf(book.kitchen, side === 'hot' ? 'hot_hold' : 'cold_hold', equipment);
  const planHours = longestOf(plan);
  const u = widest(book, readings);
  const surroundings = side === 'hot' ? assumed.coldestRoom : assumed.hottestRoom;
  const house = book.kitchen.site?.house;
  const allowed =
    side === 'hot' && house?.reheat_may_return === true ? (house.reheat_within_min ?? 0) / 60 : 0;
  const isGood = (value: number): boolean =>
    limit !== null && (side === 'hot' ? value >= limit.degF : value <= limit.degF);
  const good = readings.filter(({ value }) => isGood(value)).map(({ value }) => value);
  const from = good.length === 0 ? null : side === 'hot' ? Math.min(...good) : Math.max(...good);
  const fall = told === null ? fallOf(book, equipment, side, surroundings) : toldFall(told, surroundings);
  const interval =
    limit === null || from === null || fall === null
      ? null
      : maxCheckInterval({ ...upright(side, from, surroundings, limit.degF), tau: fall.tau, u, allowed });
  const drift =
    planHours === null || limit === null || chart.control === null || chart.drift === null
      ? null
      : driftOf(record, chart, planHours);
  const bad = readings.length - good.length;
  return {
    plan,
    planHours,
    u,
    allowed,
    from,
    surroundings,
    fall,
    interval,
    lacks: lackOf(limit !== null, from !== null, fall !== null, interval !== null),
    chance:
      interval === null || planHours === null
        ? null
        : (periodicDetect(interval.maxInterval, planHours, 1)?.one ?? null),
    claim: {
      looks: readings.length,
      bad,
      share: bad === 0 ? (ruleOfThree(readings.length, 0.05)?.upper ?? null) : null,
    },
    drift,
    longest: longestGap(book, equipment, side),
  };
}

const lackOf = (limit: boolean, from: boolean, fall: boolean, interval: boolean): LookingOften['lacks'] =>
  !limit ? 'limit' : !from ? 'readings' : !fall ? 'fall' : !interval ? 'near' : null;

/** Held cold the same, upside down: what warms toward a limit from below is what cools toward one from above. */
function upright(side: Side, from: number, air: number, limit: number) {
  const sign = side === 'hot' ? 1 : -1;
  return { from: sign * from, air: sign * air, limit: sign * limit };
}

function longestOf(plan: Body<'plan'> | null): number | null {
  if (plan === null) return null;
  const gaps = plan.checkpoints_min.flatMap((after, i, all) => {
    const next = all[i + 1];
    return next === undefined ? [] : [next - after];
  });
  const minutes = plan.at_most_min ?? plan.every_min ?? (gaps.length > 0 ? Math.max(...gaps) : null);
  return minutes === null ? null : minutes / 60;
}

/** The worst accuracy of the thermometers that were used, °F. */
function widest(book: Book, readings: CabinetRecord['readings']): number {
  const used = new Set(readings.map(({ probe }) => probe));
  const each = [...used].map((id) => {
    const probe = id === null ? undefined : book.kitchen.probes.get(id);
    if (probe?.accuracy == null) return assumed.reading;
    return probe.unit === 'degF' ? probe.accuracy : probe.accuracy * 1.8;
  });
  return each.length === 0 ? assumed.reading : Math.max(...each);
}

/** τ from two temperatures and the time between them, in surroundings that are steady. */
function tauOf(first: number, second: number, surroundings: number, hours: number): number | null {
  const rate = twoReadingRate(first, second, surroundings, hours);
  return rate === null || !(rate.k > 0) ? null : 1 / rate.k;
}

function toldFall({ from, to, minutes }: Told, surroundings: number): Fall | null {
  const tau = tauOf(from, to, surroundings, minutes / 60);
  return tau === null ? null : { tau, basis: 'told', from, to, hours: minutes / 60 };
}

/** The fastest fall between two looks at one place while the book has the cabinet without power. */
function fallOf(book: Book, equipment: string, side: Side, surroundings: number): Fall | null {
  let fastest: Fall | null = null;
  for (const { at, until } of book.off.get(equipment) ?? [])
    for (const looks of placesRead(book, equipment, side)) {
      const inside = looks.filter((look) => look.at >= at && look.at <= (until ?? book.asOf));
      const [first, second] = [inside[0], inside.at(-1)];
      if (first === undefined || second === undefined || first === second) continue;
      const [a, b] = [
        readingOf(first, side === 'hot' ? 'low' : 'high'),
        readingOf(second, side === 'hot' ? 'low' : 'high'),
      ];
      const hours = (b.at - a.at) / hour;
      const tau = tauOf(a.value, b.value, surroundings, hours);
      if (tau !== null && (fastest === null || tau < fastest.tau))
        fastest = { tau, basis: 'trip', from: a.value, to: b.value, hours };
    }
  return fastest;
}

/** Looks of one piece at one spot each, and of the air, in order of time: never a core, which falls last. */
function placesRead(book: Book, equipment: string, side: Side): Look[][] {
  const looks = [
    ...(book.air.get(equipment) ?? []),
    ...runsHeld(book, side).flatMap((run) => looksIn(run, equipment)),
  ].filter(({ suspect, spot }) => !suspect && spot !== null && HOT_SPOTS.has(spot));
  const unique = [...new Map(looks.map((look) => [look.id, look])).values()].sort((a, b) => a.at - b.at);
  return [...Map.groupBy(unique, ({ batch, piece, spot }) => `${batch} ${piece} ${spot}`).values()];
}

function driftOf(
  { side, limit }: CabinetRecord,
  { control, drift }: CabinetChart,
  interval: number,
): LookingOften['drift'] {
  if (limit === null || control === null || drift === null || !drift.shown || !drift.towardLimit) return null;
  const sign = side === 'hot' ? 1 : -1;
  const found = driftDetect({
    mean: sign * control.mean,
    sigma: control.sigma,
    k: 3,
    drift: Math.abs(drift.perDay) / 24,
    interval,
    limit: sign * limit.degF,
  });
  return found === null ? null : { margin: found.margin, warnLimit: sign * found.warnLimit };
}

/** Of each stay of food in the cabinet: from its start or a look to the next look or its end. */
function longestGap(book: Book, equipment: string, side: Side): LookingOften['longest'] {
  let longest: { from: number; to: number } | null = null;
  for (const run of runsHeld(book, side))
    run.places.forEach((place, i) => {
      if (place.equipment !== equipment) return;
      const end = Math.min(run.places[i + 1]?.at ?? run.end ?? book.asOf, book.asOf);
      const moments = [
        place.at,
        ...run.looks.filter(({ at }) => at > place.at && at < end).map(({ at }) => at),
        end,
      ].sort((a, b) => a - b);
      moments.forEach((from, place_) => {
        const to = moments[place_ + 1];
        if (to !== undefined && (longest === null || to - from > longest.to - longest.from))
          longest = { from, to };
      });
    });
  return longest;
}
