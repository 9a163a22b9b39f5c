import Big from 'big.js';
import { conventions } from '#lib/limits/conventions.ts';
import type { Spot } from '#shared/entries/step-name.ts';
import { converted, type Unit } from '#shared/units.ts';
import type { JudgedReading } from './record.ts';

type Kept = { at: number; value: number };

/** Extremes of the last minutes: the front of `most` is the greatest still inside, the front of `least` the least. */
class Extremes {
  private readonly most: Kept[] = [];
  private readonly least: Kept[] = [];
  private mostFrom = 0;
  private leastFrom = 0;

  add(kept: Kept): void {
    while (this.most.length > this.mostFrom && (this.most.at(-1)?.value ?? 0) <= kept.value) this.most.pop();
    while (this.least.length > this.leastFrom && (this.least.at(-1)?.value ?? 0) >= kept.value)
      this.least.pop();
    this.most.push(kept);
    this.least.push(kept);
  }

  /** Greatest and least later than `after`, or null where nothing is. */
  range(after: number): { most: number; least: number } | null {
    while ((this.most[this.mostFrom]?.at ?? after + 1) <= after) this.mostFrom++;
    while ((this.least[this.leastFrom]?.at ?? after + 1) <= after) this.leastFrom++;
    const most = this.most[this.mostFrom];
    const least = this.least[this.leastFrom];
    return most === undefined || least === undefined ? null : { most: most.value, least: least.value };
  }
}

const { jump } = conventions;
const withinMs = jump.within_min * 60_000;
const perCelsius = 9 / 5;

/** Whether two values differ by more than the limit, in exact decimals where floats could be wrong. */
function differs(a: number, b: number, limit: number): boolean {
  const apart = Math.abs(a - b);
  return Math.abs(apart - limit) > 1e-9 ? apart > limit : new Big(a).minus(b).abs().gt(limit);
}

function isJump(value: number, unit: Unit, earlier: Record<Unit, Extremes>, after: number): boolean {
  const same = earlier[unit].range(after);
  const limit = unit === 'degF' ? jump.degF : jump.degC;
  if (same !== null && (differs(value, same.most, limit) || differs(value, same.least, limit))) return true;
  const other: Unit = unit === 'degF' ? 'degC' : 'degF';
  const mixed = earlier[other].range(after);
  if (mixed === null) return false;
  const inF = converted(value, unit, 'degF');
  return [mixed.most, mixed.least].some((there) => differs(inF, converted(there, other, 'degF'), jump.degF));
}

/** The last reading of a spot, and once another follows within the time the extremes of those before it. */
type Watch = { at: number; value: number; unit: Unit; earlier: Record<Unit, Extremes> | null };

function isJumpAfter(watch: Watch, at: number, value: number, unit: Unit): boolean {
  watch.earlier ??= { degF: new Extremes(), degC: new Extremes() };
  watch.earlier[watch.unit].add({ at: watch.at, value: watch.value });
  return isJump(value, unit, watch.earlier, at - withinMs);
}

/**
 * A cheap look over all spots and both units at once: is there anything to ask? Two readings less than 10 minutes
 * apart lie in one stretch of 10 minutes or in two that follow each other, so where no such two span as much as the
 * lesser limit, nothing jumped. Floats are good enough, for the limit is taken a degree short.
 */
function maySpan(readings: readonly JudgedReading[], looks: readonly number[]): boolean {
  const asked = Math.min(jump.degF, jump.degC * perCelsius) - 1;
  let [stretch, most, least] = [Number.NaN, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [mostBefore, leastBefore] = [most, least];
  for (let place = 0; place < looks.length; place++) {
    const reading = readings[looks[place] ?? -1];
    if (reading === undefined) continue;
    const here = Math.floor(reading.at / withinMs);
    if (here !== stretch) {
      const follows = here === stretch + 1;
      mostBefore = follows ? most : Number.NEGATIVE_INFINITY;
      leastBefore = follows ? least : Number.POSITIVE_INFINITY;
      [stretch, most, least] = [here, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    }
    const degF = reading.unit === 'degF' ? reading.value : reading.value * perCelsius + 32;
    if (degF > most) most = degF;
    if (degF < least) least = degF;
    if (Math.max(most, mostBefore) - Math.min(least, leastBefore) > asked) return true;
  }
  return false;
}

/**
 * Whether two food readings of one piece and spot, less than 10 minutes apart, differ by more than 60 °F (33 °C;
 * in two units 60 °F after exact conversion). Said, and changes no verdict. One pass with the extremes of the
 * last 10 minutes, so a logger's close readings cost no more than a cook's.
 */
export function hasJump(readings: readonly JudgedReading[], looks: readonly number[]): boolean {
  if (!maySpan(readings, looks)) return false;
  const bySpot = new Map<Spot | null, Watch>();
  for (const index of looks) {
    const reading = readings[index];
    if (reading === undefined) continue;
    const { at, value, unit } = reading;
    const watch = bySpot.get(reading.spot);
    if (watch === undefined) {
      bySpot.set(reading.spot, { at, value, unit, earlier: null });
      continue;
    }
    if (at - watch.at >= withinMs) watch.earlier = null;
    else if (isJumpAfter(watch, at, value, unit)) return true;
    watch.at = at;
    watch.value = value;
    watch.unit = unit;
  }
  return false;
}
