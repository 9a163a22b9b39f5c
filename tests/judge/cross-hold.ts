import type { StageName } from '#lib/judge/answer.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Unit } from '#shared/units.ts';
import {
  type Asked,
  boiling,
  type Case,
  far,
  look,
  type Published,
  temperature,
  time,
  verdictOf,
} from './crossing.ts';
import { at } from './records.ts';

/** Hot and cold holding, and how long and how often. */
export function holding({ figures }: Published, profile: Profile): Case[] {
  const cases: Case[] = [];
  const hot: Asked = { kind: 'hot_hold', stage: 'at_readings', profile };
  const one = (asked: Asked, spot: 'edge' | 'surface' | 'warmest') => (ofTenths: number, unit: Unit) =>
    verdictOf(asked, [look(0, ofTenths, unit, { spot })]);
  if (figures.hot_hold !== null) {
    cases.push(...temperature('hot_hold', figures.hot_hold, one(hot, 'edge')));
    const { hot_hold_roast: roast, hot_hold_surface: surface } = figures;
    const allowed: Asked = { ...hot, class: 'intact_roast', facts: { roast_cook: 'kept' } };
    if (roast !== null) cases.push(...temperature('hot_hold_roast', roast, one(allowed, 'edge')));
    if (surface !== null) cases.push(...temperature('hot_hold_surface', surface, one(hot, 'surface')));
  }
  const cold: Asked = { kind: 'cold_hold', stage: 'at_readings', profile };
  if (figures.cold_hold !== null)
    cases.push(...temperature('cold_hold', figures.cold_hold, one(cold, 'warmest')));
  const { hot_hold_at_most: most, record_hot_every: every } = figures;
  const ended = (stage: StageName) => (minutes: number) =>
    verdictOf({ ...hot, stage, start: at(0), end: at(minutes) }, [far(0, boiling)]);
  if (most !== null) cases.push(...time('hot_hold_at_most', most, ended('hold_length')));
  if (every !== null) cases.push(...time('record_hot_every', every, ended('record_interval')));
  return cases;
}
