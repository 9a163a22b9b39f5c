import type { Kitchen } from '#lib/fold/book.ts';
import { foldLooks } from '#lib/fold/looks.ts';
import type { RuleKind, StepRecord } from '#lib/judge/record.ts';
import type { EntryOf } from '#shared/entries/entry.ts';
import type { FoodClass } from '#shared/entries/food.ts';
import type { Spot } from '#shared/entries/step-name.ts';
import { isoOf } from '#shared/time.ts';

/** What the judge is asked, the limit that the bare pass compares with, and the readings that both go over. */
export type AskedStep = { kind: BenchKind; record: StepRecord; limit: { degF: number; degC: number } };

export const benchKinds = ['hot_hold', 'cooling', 'reheat', 'cook'] as const satisfies readonly RuleKind[];
export type BenchKind = (typeof benchKinds)[number];

type Shape = {
  food: FoodClass;
  pieces: number;
  hours: number;
  spots: readonly (Spot | null)[];
  limit: { degF: number; degC: number };
  /** °F of a piece at a share (0 to 1) of the step. */
  at: (share: number) => number;
};

const chart = { degF: 130, degC: 54.4 };

/** An invented step of each kind: how many pieces, how long, where it is read, and how warm it is when. */
const shapes: Record<BenchKind, Shape> = {
  hot_hold: {
    food: 'intact_roast',
    pieces: 8,
    hours: 14,
    spots: ['edge', 'core'],
    limit: { degF: 135, degC: 57 },
    at: (share) => 152 - 12 * share,
  },
  cooling: {
    food: 'pulled_or_chopped',
    pieces: 4,
    hours: 6,
    spots: ['core', 'core', 'surface'],
    limit: { degF: 41, degC: 5 },
    at: (share) => 36 + 109 * Math.exp(-4.2 * share),
  },
  reheat: {
    food: 'pulled_or_chopped',
    pieces: 4,
    hours: 2,
    spots: ['coldest', 'core', 'edge'],
    limit: { degF: 165, degC: 74 },
    at: (share) => 178 - 140 * Math.exp(-3.2 * share),
  },
  cook: {
    food: 'intact_roast',
    pieces: 8,
    hours: 13,
    spots: ['core', 'edge'],
    limit: chart,
    at: (share) => 205 - 165 * Math.exp(-3 * share),
  },
};

const firstNight = Date.parse('2026-03-07T21:00:00Z');
const dayMs = 86_400_000;

/** A set-up with nothing in it: what the readings need of it is their thermometer's accuracy, which nobody noted. */
const kitchen: Kitchen = {
  site: null,
  people: new Map(),
  equipment: new Map(),
  probes: new Map(),
  foods: new Map(),
  plans: new Map(),
  limits: new Map(),
};

/** One reading as it stands in the book. */
function readingOf(shape: Shape, name: string, start: number, i: number, of: number): EntryOf<'reading'> {
  const at = isoOf(start + Math.round((i / of) * shape.hours * 3600) * 1000);
  const value = Math.round((shape.at(i / of) + ((i * 7) % 5) / 2) * 10) / 10;
  return {
    id: `${name}-${i}`,
    kind: 'reading',
    version: 1,
    at,
    entered_at: at,
    by: 'cook',
    site: 'kitchen',
    seq: i + 1,
    received_at: at,
    known: 'tap',
    device: 'phone',
    body: {
      batch: name,
      piece: (i % shape.pieces) + 1,
      equipment: 'cabinet',
      spot: shape.spots[i % shape.spots.length] ?? null,
      typed: String(value),
      value,
      unit: 'degF',
      probe: 'probe',
      held_s: null,
      round: null,
      source: 'hand',
      correction: null,
      late_reason: null,
    },
  };
}

function step(kind: BenchKind, batch: number, readings: number): AskedStep {
  const shape = shapes[kind];
  const start = firstNight + batch * dayMs;
  const name = `${kind}-${batch}`;
  const entries = Array.from({ length: readings }, (_, i) => readingOf(shape, name, start, i, readings));
  const end = start + shape.hours * 3_600_000;
  return {
    kind,
    limit: shape.limit,
    record: {
      food: { class: shape.food, pieces: shape.pieces },
      facts: { roast_cook: 'kept', oven: 'pit', oven_temp: 250 },
      planIntervalMin: 150,
      start,
      end,
      asOf: end,
      readings: foldLooks(entries, kitchen, new Map(), new Set()),
    },
  };
}

/** Batches of every kind in turn, their readings as the kitchen's fold gives them to the judge. */
export const mixedSteps = (batches: number, readings: number): AskedStep[] =>
  Array.from({ length: batches }, (_, batch) =>
    step(benchKinds[batch % benchKinds.length] ?? 'hot_hold', batch, readings),
  );
