import type { Facts, RuleKind } from '#lib/judge/record.ts';
import type { Chance } from './chance.ts';
import { minuteOrNull } from './clock.ts';
import type { Stretch } from './food.ts';

/** Something that happens to the place where the food stands: from minute to minute it changes what is around it. */
type Event = { from: number; to: number; around: (before: number) => number };

/** What surrounds the food, °F, before the step and in it. */
export type Setting = { stretches: Stretch[]; first: number; tau: { edge: number; core: number } };

const door = (chance: Chance, from: number, by: number): Event => ({
  from,
  to: from + chance.between(1, 10),
  around: (before) => before + by,
});

/** The power goes: the air drifts to the room by steps; after the restart it comes back by steps. */
function powerTrip(chance: Chance, from: number, room: number): Event[] {
  const length = chance.between(10, 240);
  const drift = chance.between(15, 60); // minutes to get most of the way
  const step = (at: number, to: number, share: number): Event => ({
    from: at,
    to,
    around: (before) => before + (room - before) * share,
  });
  const events: Event[] = [];
  for (let at = from; at < from + length; at += drift / 3)
    events.push(step(at, Math.min(at + drift / 3, from + length), 1 - Math.exp(-(at - from + 2) / drift)));
  events.push(step(from + length, from + length + drift / 3, 0.5));
  return events;
}

/** A thermostat that swings by so many degrees about its figure. */
function swing(chance: Chance, from: number, to: number, by: number): Event[] {
  const half = chance.between(6, 25);
  const events: Event[] = [];
  for (let at = from; at < to; at += 2 * half) {
    events.push({ from: at, to: at + half, around: (before) => before + by });
    events.push({ from: at + half, to: at + 2 * half, around: (before) => before - by });
  }
  return events;
}

function laidOut(
  base: readonly { from: number; around: number }[],
  events: readonly Event[],
  stirs: readonly number[],
): Stretch[] {
  const starts = base.map(({ from }) => from);
  const origin = starts[0] ?? 0;
  for (const { from, to } of events) starts.push(from, to);
  starts.push(...stirs);
  const cuts = [...new Set(starts)].filter((at) => at >= origin).sort((a, b) => a - b);
  let [here, live] = [0, [] as Event[]];
  const sorted = [...events].sort((a, b) => a.from - b.from);
  let next = 0;
  return cuts.map((from) => {
    while ((base[here + 1]?.from ?? Number.POSITIVE_INFINITY) <= from) here++;
    for (let event = sorted[next]; event !== undefined && event.from <= from; event = sorted[++next])
      live.push(event);
    live = live.filter(({ to }) => to > from);
    const around = live.reduce((value, event) => event.around(value), base[here]?.around ?? 0);
    return { from, around, stirred: stirs.includes(from) };
  });
}

const minutes = (chance: Chance, most: number, length: number): number[] =>
  Array.from({ length: chance.whole(0, most) }, () => chance.between(0, length));

/** Minutes before the step from which the food is followed. */
export const LEAD_IN = -90;

/** What was so of the step beside its length. */
type Course = { truth: Facts; isSlow: boolean };

type Maker = (chance: Chance, length: number, course: Course) => Setting;

const hold =
  (cold: boolean): Maker =>
  (chance, length) => {
    const figure = cold ? 41 : 135;
    const sign = cold ? -1 : 1;
    const set = figure + sign * chance.between(-4, chance.is(0.5) ? 12 : 40) * (cold ? 0.3 : 1);
    const room = chance.between(65, 95);
    const events: Event[] = [];
    if (chance.is(0.35)) events.push(...swing(chance, LEAD_IN, length, chance.between(1, cold ? 3 : 9)));
    for (const from of minutes(chance, 5, length))
      events.push(door(chance, from, cold ? chance.between(5, 25) : -chance.between(15, 70)));
    if (chance.is(0.15)) events.push(...powerTrip(chance, chance.between(0, length), room));
    const first = set + chance.between(-6, 12) * (cold ? 0.5 : 1) + (chance.is(0.2) ? sign * -8 : 0);
    return {
      stretches: laidOut(
        [{ from: LEAD_IN, around: set }],
        events,
        chance.is(0.1) ? minutes(chance, 3, length) : [],
      ),
      first,
      tau: { edge: chance.between(6, 60), core: chance.between(15, 180) },
    };
  };

const cooled: Maker = (chance, length) => {
  const hot = chance.between(133, 190);
  const onTable = chance.is(0.5) ? chance.between(2, 90) : 0;
  const cold = chance.one([33, 33, chance.between(-5, 25), chance.between(34, 40), chance.between(40, 48)]);
  const base = [{ from: LEAD_IN, around: hot }];
  if (onTable > 0) base.push({ from: 0, around: chance.between(65, 85) });
  base.push({ from: onTable, around: cold });
  const events: Event[] = minutes(chance, 3, length).map((from) => door(chance, from, chance.between(4, 25)));
  if (chance.is(0.08)) events.push(...powerTrip(chance, chance.between(0, length), 75));
  // Somebody puts it back onto the heat, or a hot pan beside it.
  if (chance.is(0.06)) {
    const from = chance.between(20, length);
    const heat = chance.between(90, 230);
    events.push({ from, to: from + chance.between(10, 70), around: () => heat });
  }
  const slow = chance.is(0.35) ? 3 : 1;
  return {
    stretches: laidOut(base, events, chance.is(0.4) ? minutes(chance, 5, Math.min(length, 180)) : []),
    first: hot + chance.between(-3, 8),
    tau: { edge: slow * chance.between(5, 30), core: slow * chance.between(8, 60) },
  };
};

const heatedUp =
  (oven: readonly [number, number], tau: readonly [number, number]): Maker =>
  (chance, length, { isSlow }) => {
    const cold = chance.between(33, chance.is(0.8) ? 40.5 : 50);
    const heat = chance.between(oven[0], oven[1]);
    const base = [
      { from: LEAD_IN, around: cold },
      { from: chance.is(0.5) ? 0 : chance.between(0, 20), around: heat },
    ];
    if (chance.is(0.3)) base.push({ from: chance.between(20, length), around: chance.between(70, 160) });
    base.sort((a, b) => a.from - b.from);
    const events: Event[] = minutes(chance, 4, length).map((from) =>
      door(chance, from, -chance.between(20, 120)),
    );
    if (chance.is(0.3)) events.push(...swing(chance, 0, length, chance.between(2, 20)));
    if (chance.is(0.1)) events.push(...powerTrip(chance, chance.between(0, length), 75));
    const slow = chance.is(isSlow ? 0.9 : 0.15) ? chance.between(2, 6) : 1;
    return {
      stretches: laidOut(base, events, chance.is(0.3) ? minutes(chance, 4, length) : []),
      first: cold + chance.between(-1, 1),
      tau: {
        edge: slow * chance.between(tau[0], tau[0] * 3),
        core: slow * chance.between(tau[1], tau[1] * 4),
      },
    };
  };

/** Out of the cold, out of the heat, or from the shelf; then in a room, on ice, or in the sun. */
const out: Maker = (chance, length, { truth: { mode, starts_as: startsAs } }) => {
  const isHot = mode !== '6h' && startsAs === null && chance.is(0.4);
  const before = isHot
    ? chance.between(131, 165)
    : startsAs === null || chance.is(0.3)
      ? chance.between(34, 43)
      : chance.between(55, 74);
  const around = chance.is(0.3) ? chance.between(40, 62) : chance.between(63, 100);
  const events: Event[] = minutes(chance, 3, length).map((from) =>
    door(chance, from, chance.between(-20, 20)),
  );
  const base = [
    { from: LEAD_IN, around: before },
    { from: chance.is(0.8) ? 0 : -chance.between(0, 30), around },
  ];
  const slow = chance.is(0.5) ? 4 : 1;
  return {
    stretches: laidOut(base, events, chance.is(0.2) ? minutes(chance, 2, length) : []),
    first: before + chance.between(-2, 2),
    tau: { edge: slow * chance.between(6, 40), core: slow * chance.between(15, 90) },
  };
};

/** From the cold into a first heat, into a cold place, and into a last heat. */
const inParts: Maker = (chance, length, { truth }) => {
  const cold = chance.between(33, 40);
  const heatTo = minuteOrNull(truth.heat_to) ?? length / 3;
  const finalFrom = minuteOrNull(truth.final_from) ?? (2 * length) / 3;
  const table = chance.is(0.4) ? chance.between(1, 60) : 0;
  const base = [
    { from: LEAD_IN, around: cold },
    { from: 0, around: chance.between(160, 420) },
    { from: heatTo, around: table > 0 ? chance.between(60, 90) : cold },
    { from: Math.min(heatTo + table, finalFrom), around: chance.is(0.7) ? chance.between(10, 38) : cold },
    { from: finalFrom, around: chance.between(150, 350) },
  ];
  const events: Event[] = minutes(chance, 3, length).map((from) =>
    door(chance, from, chance.between(-30, 30)),
  );
  const slow = chance.is(0.35) ? chance.between(1, 4) : 1;
  return {
    stretches: laidOut(base, events, chance.is(0.2) ? minutes(chance, 2, length) : []),
    first: cold,
    tau: { edge: slow * chance.between(5, 30), core: slow * chance.between(10, 60) },
  };
};

const makers: Record<RuleKind, Maker> = {
  hot_hold: hold(false),
  cold_hold: hold(true),
  cooling: cooled,
  reheat: heatedUp([170, 360], [6, 12]),
  cook: heatedUp([150, 300], [15, 30]),
  time_control: out,
  noncontinuous: inParts,
};

/** The surroundings of a step of `length` minutes; `isSlow`: a whole shoulder, low and slow. */
export const settingOf = (
  kind: RuleKind,
  chance: Chance,
  length: number,
  truth: Facts,
  isSlow = false,
): Setting => makers[kind](chance, length, { truth, isSlow });
