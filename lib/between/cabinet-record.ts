import type { Book, JudgedRun, Look } from '#lib/fold/book.ts';
import { high, low } from '#lib/judge/compare.ts';
import { conventions } from '#lib/limits/conventions.ts';
import type { TemperatureFigure } from '#lib/limits/figure.ts';
import type { EquipmentKind } from '#shared/entries/equipment.ts';
import type { StepName } from '#shared/entries/step-name.ts';
import { converted } from '#shared/units.ts';

/** A place that holds food hot fails downward, one that holds it cold upward. */
export type Side = 'hot' | 'cold';

const sides: Partial<Record<EquipmentKind, Side>> = {
  pit: 'hot',
  heated_cabinet: 'hot',
  steam_table: 'hot',
  insulated_box: 'hot',
  cooler: 'cold',
  ice_bath: 'cold',
  blast_chiller: 'cold',
};

/** Null: nothing is held at a limit there (a rack, an oven, a freezer). */
export const sideOf = (kind: EquipmentKind): Side | null => sides[kind] ?? null;

/** ms and °F; `probe` as the reading names it. */
export type CabinetReading = { at: number; value: number; probe: string | null };

export type CabinetRecord = {
  side: Side;
  /** Readings of its air, or of the food in it: at each look the coldest (held cold: the warmest). */
  what: 'air' | 'food';
  readings: CabinetReading[];
  /** Of so many readings the worst of each `everyMin` stands here; null = all of them do. */
  everyMin: number | null;
  /** °F and as published; null = the limits in force say nothing of it. */
  limit: { degF: number; figure: TemperatureFigure } | null;
};

/** With fewer readings of the air than this the food speaks for the cabinet. */
const FEWEST_AIR = 3;
/** A sensor that reads each minute says no more of a cabinet than one that reads each quarter of an hour. */
const MOST = 400;
const QUARTER_MIN = 15;

/** What was read in a cabinet since `fromMs`, suspect readings left out. Null: it is not known, or holds no limit. */
export function cabinetRecord(book: Book, equipment: string, fromMs: number): CabinetRecord | null {
  const place = book.kitchen.equipment.get(equipment);
  const side = place === undefined ? null : sideOf(place.kind);
  if (side === null) return null;
  const since = (look: Look): boolean => look.at >= fromMs && look.at <= book.asOf && !look.suspect;
  const air = (book.air.get(equipment) ?? []).filter(since);
  const food = foodLooks(book, equipment, side).filter(since);
  const what = air.length >= FEWEST_AIR || food.length === 0 ? 'air' : 'food';
  const worst = worstOf(side);
  const read = (what === 'air' ? air : food)
    .map((look) => ({ at: look.at, value: inF(look, side), probe: look.probe }))
    .sort((a, b) => a.at - b.at);
  const looks = what === 'air' ? read : each(read, conventions.look_min, worst);
  const readings = looks.length > MOST ? each(looks, QUARTER_MIN, worst) : looks;
  const figure = book.limits.profile?.figures[side === 'hot' ? 'hot_hold' : 'cold_hold'] ?? null;
  const degF = figure === null ? null : limitInF(figure);
  return {
    side,
    what,
    readings,
    everyMin: looks.length > MOST ? QUARTER_MIN : null,
    limit: figure === null || degF === null ? null : { degF, figure },
  };
}

const inF = (look: Look, side: Side): number =>
  converted(side === 'hot' ? low(look) : high(look), look.unit, 'degF');

function limitInF({ value, first }: TemperatureFigure): number | null {
  const other = first === 'degF' ? 'degC' : 'degF';
  const [own, else_] = [value[first], value[other]];
  return own !== null
    ? converted(own, first, 'degF')
    : else_ === null
      ? null
      : converted(else_, other, 'degF');
}

const heldAt: Record<Side, ReadonlySet<StepName>> = {
  hot: new Set<StepName>(['hot_hold', 'service']),
  cold: new Set<StepName>(['cold_hold']),
};

/** Runs of food that was held at this side's limit. */
export const runsHeld = (book: Book, side: Side): JudgedRun[] =>
  [...book.batches.values()].flatMap(({ runs }) => runs.filter(({ step }) => heldAt[side].has(step)));

/** Looks at a run's food while it stood there: as the reading names the place, or by where the run was then. */
export const looksIn = (run: JudgedRun, equipment: string): Look[] =>
  run.looks.filter((look) => {
    const stood = run.places.findLast(({ at }) => at <= look.at)?.equipment ?? null;
    return (look.equipment ?? stood) === equipment;
  });

/** Each look once: a look is named by the runs of every piece that it speaks of. */
function foodLooks(book: Book, equipment: string, side: Side): Look[] {
  const found = new Map<string, Look>();
  for (const run of runsHeld(book, side))
    for (const look of looksIn(run, equipment)) if (look.spot !== 'air') found.set(look.id, look);
  return [...found.values()];
}

const worstOf = (side: Side) => (a: CabinetReading, b: CabinetReading) =>
  side === 'hot' ? a.value < b.value : a.value > b.value;

/** Readings up to so many minutes after the first of them are one: the worst, at its own moment. */
function each(
  readings: readonly CabinetReading[],
  minutes: number,
  worse: (a: CabinetReading, b: CabinetReading) => boolean,
): CabinetReading[] {
  const kept: CabinetReading[] = [];
  let began = Number.NEGATIVE_INFINITY;
  for (const reading of readings) {
    const last = kept.at(-1);
    if (last === undefined || reading.at - began > minutes * 60_000) {
      began = reading.at;
      kept.push(reading);
    } else if (worse(reading, last)) kept[kept.length - 1] = reading;
  }
  return kept;
}
