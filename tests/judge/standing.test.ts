import { describe, expect, it } from 'vitest';
import { type StandingEvent, standing } from '#lib/judge/standing.ts';

const batch: StandingEvent = { at: 0, type: 'batch', pieces: ['1', '2'] };
const broken: StandingEvent = {
  at: 1,
  type: 'stage',
  stage: 'at_readings',
  verdict: 'broken',
  pieces: ['1'],
};
const reheat = {
  at: 2,
  type: 'reheat',
  pieces: ['1'],
  temperature: 'kept',
  time: 'kept',
  allowed: true,
  in_time: true,
} as const;
const decision = {
  at: 2,
  type: 'decision',
  pieces: ['1'],
  role: 'manager',
  reason: 'a second probe',
  allowed: true,
} as const;

const standingAfter = (...events: StandingEvent[]) =>
  Object.fromEntries(standing([batch, broken, ...events], 10));

describe('a block ends only by what ends it', () => {
  it('by a reheat kept in temperature and time, begun in time, where the house lets it', () => {
    expect(standingAfter(reheat)).toEqual({ 1: 'serve', 2: 'serve' });
    for (const but of [
      { allowed: false },
      { in_time: false },
      { time: 'not_applicable' },
      { temperature: 'not_shown' },
    ] as const)
      expect(standingAfter({ ...reheat, ...but })).toMatchObject({ 1: 'do_not_serve' });
  });
  it('by a manager’s or owner’s decision with a reason that the house lets count', () => {
    expect(standingAfter(decision)).toMatchObject({ 1: 'serve' });
    expect(standingAfter({ ...decision, role: 'owner' })).toMatchObject({ 1: 'serve' });
    for (const but of [{ role: 'lead' }, { reason: '  ' }, { allowed: false }])
      expect(standingAfter({ ...decision, ...but })).toMatchObject({ 1: 'do_not_serve' });
  });
  it('and a discarded piece stays gone', () => {
    const gone: StandingEvent = { at: 2, type: 'discard', pieces: ['1'] };
    expect(standingAfter(gone, { ...reheat, at: 3 }, { at: 4, type: 'deviation', pieces: null })).toEqual({
      1: 'gone',
      2: 'do_not_serve',
    });
  });
});

describe('a block is handed on', () => {
  it('through split, cut and join, whatever comes first in the list', () => {
    const cut: StandingEvent = { at: 2, type: 'cut', from: '1', to: ['1a', '1b'] };
    const join: StandingEvent = { at: 3, type: 'join', from: ['1a', '2'], to: 'pan' };
    expect(standingAfter(join, cut)).toEqual({ '1b': 'do_not_serve', pan: 'do_not_serve' });
  });
  it('and is not seen before it was proven', () => {
    expect(Object.fromEntries(standing([batch, broken], 0))).toEqual({ 1: 'serve', 2: 'serve' });
  });
});
