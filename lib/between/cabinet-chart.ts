import {
  adjustedForNeighbours,
  cusum,
  driftCrossing,
  ewma,
  individuals,
  runRules,
} from '#lib/science/control-charts.ts';
import type { CabinetReading, CabinetRecord } from './cabinet-record.ts';
import { hour } from './readings.ts';

/**
 * What a chart says of a cabinet's readings. Class W all over: it may only warn, and a reading inside the limits
 * proves nothing about food. °F.
 */
export type CabinetChart = {
  /** Null with fewer readings than `LEAST`, or when all of those are equal. */
  control: Control | null;
  rules: RuleSaw[];
  /** Null as `control`. */
  smoothed: Smoothed | null;
  sums: Sums | null;
  drift: CabinetDrift | null;
};

export type Control = {
  mean: number;
  low: number;
  high: number;
  /** Likeness of neighbours, −1 … 1, and the spread without and with it. */
  r1: number;
  sigmaNaive: number;
  sigma: number;
  /** The limits were made from the first so many readings: what came after is held to them. */
  from: number;
};

export const runRuleNames = [
  'outside',
  'nine_on_one_side',
  'six_one_way',
  'two_of_three',
  'four_of_five',
] as const;
/** `at`: the readings at which the rule spoke. */
export type RuleSaw = { rule: (typeof runRuleNames)[number]; at: CabinetReading[] };

/** Exponentially weighted readings: what is small and lasts is seen sooner than in single ones. */
export type Smoothed = {
  /** The level of each reading but the first, in order. */
  levels: { reading: CabinetReading; level: number }[];
  low: number;
  high: number;
  /** Readings whose smoothed level lies outside the exact limits of its own place. */
  out: CabinetReading[];
};

/** Sums of small departures on one side of usual: its latest value, where it spoke, when what it saw began. */
export type SumSide = { now: number; at: CabinetReading[]; began: number | null };
/** `limit`: a sum speaks beyond it; both in °F of what is left of a reading without its neighbour's share. */
export type Sums = { limit: number; slack: number; above: SumSide; below: SumSide };

export type CabinetDrift = {
  perDay: number;
  /** Standard error of it, widened for neighbours that are alike. */
  errorPerDay: number;
  /** Twice its error at least: less is no drift that the readings could show. */
  shown: boolean;
  towardLimit: boolean;
  /** Its line is beyond the limit already at the last reading. */
  passed: boolean;
  /** When the line is at the operating limit; null: never, not in a year, passed already, or nothing is shown. */
  crossesAt: number | null;
};

/** Show limits from 20 readings on (NIST/SEMATECH e-Handbook 6.3.2.2). */
export const LEAST = 20;
const YEAR_MS = 365 * 24 * hour;

export function cabinetChart({ readings, limit, side }: CabinetRecord): CabinetChart {
  const control = controlOf(readings.map(({ value }) => value));
  return {
    control,
    rules: control === null ? [] : rulesOf(readings, control),
    smoothed: control === null ? null : smoothedOf(readings, control),
    sums: control === null ? null : sumsOf(readings, control),
    drift: driftOf(readings, control?.r1 ?? null, limit?.degF ?? null, side),
  };
}

/** From the older two thirds, so that a change of the last days is held to what was before it. */
function controlOf(x: readonly number[]): Control | null {
  if (x.length < LEAST) return null;
  const from = Math.max(LEAST, Math.floor((x.length * 2) / 3));
  const base = x.slice(0, from);
  const [bare, adjusted] = [individuals(base), adjustedForNeighbours(base)];
  if (bare === null || adjusted === null || !(adjusted.sigmaMr > 0)) return null;
  // Neighbours less alike than by chance would narrow the limits: they stay as they are without it.
  const sigma = Math.max(adjusted.sigmaMr, adjusted.sigmaAdj);
  return {
    mean: bare.mean,
    low: bare.mean - 3 * sigma,
    high: bare.mean + 3 * sigma,
    r1: adjusted.r1,
    sigmaNaive: adjusted.sigmaMr,
    sigma,
    from,
  };
}

/** Neighbours that are unlike by chance are taken as independent; ones too alike would leave nothing of a reading. */
const MOST_ALIKE = 0.95;
const likeness = ({ r1 }: Control): number => Math.min(MOST_ALIKE, Math.max(0, r1));

/** What is left of each reading but the first when its neighbour's share is taken off, and its spread. °F. */
function leftOf(readings: readonly CabinetReading[], control: Control): { left: number[]; spread: number } {
  const { mean, sigma } = control;
  const alike = likeness(control);
  return {
    left: readings
      .slice(1)
      .map(({ value }, i) => value - mean - alike * ((readings[i]?.value ?? mean) - mean)),
    spread: sigma * Math.sqrt(1 - alike ** 2),
  };
}

/**
 * Outside is of the readings themselves. The other rules look at what is left of each reading when its neighbour's
 * share is taken off, x_i − m − r1 (x_(i−1) − m) with σ√(1 − r1²): a thermostat that swings makes runs by itself.
 */
function rulesOf(readings: readonly CabinetReading[], control: Control): RuleSaw[] {
  const x = readings.map(({ value }) => value);
  const { left, spread } = leftOf(readings, control);
  const own = runRules(x, control.mean, control.sigma);
  const rest = runRules(left, 0, spread);
  const at = (places: readonly number[] | undefined, shift: number): CabinetReading[] =>
    (places ?? []).flatMap((place) => readings[place - 1 + shift] ?? []);
  return [
    { rule: 'outside', at: at(own?.rule1, 0) },
    { rule: 'nine_on_one_side', at: at(rest?.rule2, 1) },
    { rule: 'six_one_way', at: at(rest?.rule3, 1) },
    { rule: 'two_of_three', at: at(rest?.rule5, 1) },
    { rule: 'four_of_five', at: at(rest?.rule6, 1) },
  ];
}

/** λ and L of the smoothed level, k and h of the sums in σ: NIST/SEMATECH e-Handbook 6.3.2.3 and 6.3.2.4 (read, second hand). */
export const SMOOTH = { lambda: 0.2, reach: 3 } as const;
export const SUM = { slack: 0.5, limit: 5 } as const;

/** A level that stays off by d leaves (1 − r1)·d of each reading: divided by it, the smoothed rest is a level again. */
function smoothedOf(readings: readonly CabinetReading[], control: Control): Smoothed | null {
  const { left, spread } = leftOf(readings, control);
  const found = ewma(left, { ...SMOOTH, start: 0, sigma: spread });
  if (found === null) return null;
  const level = (rest: number): number => control.mean + rest / (1 - likeness(control));
  return {
    levels: found.z.flatMap((z, i) => {
      const reading = readings[i + 1];
      return reading === undefined ? [] : [{ reading, level: level(z) }];
    }),
    low: level(found.lcl),
    high: level(found.ucl),
    out: found.outExactLimits.flatMap((place) => readings[place] ?? []),
  };
}

function sumsOf(readings: readonly CabinetReading[], control: Control): Sums | null {
  const { left, spread } = leftOf(readings, control);
  const [slack, limit] = [SUM.slack * spread, SUM.limit * spread];
  const found = cusum(left, { target: 0, k: slack, h: limit });
  if (found === null) return null;
  const side = (sums: readonly number[]): SumSide => {
    const places = sums.flatMap((sum, i) => (sum > limit ? [i] : []));
    // What the last stretch beyond the limit saw began after the sum was last nothing.
    const last = places.at(-1);
    const zero = last === undefined ? -1 : sums.lastIndexOf(0, last);
    return {
      now: sums.at(-1) ?? 0,
      at: places.flatMap((i) => readings[i + 1] ?? []),
      began: last === undefined ? null : (readings[zero + 2]?.at ?? null),
    };
  };
  return { limit, slack, above: side(found.high), below: side(found.low) };
}

function driftOf(
  readings: readonly CabinetReading[],
  r1: number | null,
  limit: number | null,
  side: CabinetRecord['side'],
): CabinetDrift | null {
  const first = readings[0]?.at ?? 0;
  const last = readings.at(-1)?.at ?? 0;
  // Held cold, up is toward the limit: the same line upside down.
  const sign = side === 'hot' ? 1 : -1;
  const found = driftCrossing(
    readings.map(({ at }) => (at - first) / hour),
    readings.map(({ value }) => sign * value),
    sign * (limit ?? 0),
  );
  if (found === null || readings.length < LEAST) return null;
  const alike = Math.min(0.95, Math.max(0, r1 ?? 0));
  const error = found.slopeSe * Math.sqrt((1 + alike) / (1 - alike));
  const shown = found.slope !== 0 && Math.abs(found.slope) >= 2 * error;
  const towardLimit = found.slope < 0;
  const at = found.tCross === null ? null : first + found.tCross * hour;
  const ahead = at !== null && at > last && at - last < YEAR_MS;
  return {
    perDay: sign * found.slope * 24,
    errorPerDay: error * 24,
    shown,
    towardLimit,
    passed: at !== null && at <= last,
    crossesAt: limit !== null && shown && towardLimit && ahead ? at : null,
  };
}
