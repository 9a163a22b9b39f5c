import type { Body } from '#shared/entries/entry.ts';
import type { LimitsChanges } from '#shared/entries/limits.ts';
import { type Night, night } from '../fold/night.ts';

export const ours = '01995555-0000-7000-8000-000000000001';
const house = { section: 'house limit', authority: null, document: null, dated: null };
const granted = { section: 'V-12', authority: 'County health', document: 'Variance 12', dated: '2026-03-01' };
export const looser = { value: 130, unit: 'degF' as const, ...granted };
export const stricter = { value: 38, unit: 'degF' as const, ...house };

export const body = (changes: LimitsChanges, more: Partial<Body<'limits'>> = {}): Body<'limits'> => ({
  limits: ours,
  name: 'Ours',
  extends: 'fda_2022',
  changes,
  active: true,
  ...more,
});

const chosen = (made: Night): Night => {
  const { site } = made.book('17:30').kitchen;
  if (!site) throw new Error('a night without a kitchen');
  return made.add('site', '17:40', { ...site, profile: ours });
};

/** The cook has a variance entered at 17:30, the boss sets the cooler stricter at 19:00. */
export const twoHands = (): Night =>
  chosen(night().add('limits', '17:30', body({ hot_hold: looser }), { by: 'cook' }))
    .add('limits', '19:00', body({ hot_hold: looser, cold_hold: stricter }), { by: 'boss' })
    .batch('19:10', 'A', 1, 'ribs')
    .step('19:11', 'A', 'hot_hold', 'cab1')
    .read('19:20', 'A1 edge', '138');
