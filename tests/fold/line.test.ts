import { describe, expect, it } from 'vitest';
import { lineOf } from '#lib/fold/line.ts';
import { ms, type Night, night } from './night.ts';

const held = (): Night =>
  night()
    .plan('hot_hold', ['cab1'], { every_min: 120, at_most_min: 150 })
    .batch('18:00', 'T', 1, 'turkey')
    .step('20:00', 'T', 'hot_hold', 'cab1');

const drawn = (written: Night, clock: string) => {
  const book = written.book(clock);
  const run = book.batches.get('T')?.runs[0];
  if (!run) throw new Error('no run');
  return lineOf(book, run);
};

const told = (written: Night, clock: string) =>
  drawn(written, clock).stretches.map(({ kind, from, to }) => [kind, from, to]);

describe('the proof line', () => {
  it('is open where nobody has looked yet', () => {
    expect(told(held(), '21:00')).toEqual([
      ['nobody_looked', ms('20:00'), ms('21:00')],
      ['ahead', ms('21:00'), ms('22:00')],
    ]);
  });

  it('is seen between two good looks no further apart than the interval, exactly the interval included', () => {
    const written = held().read('20:30', 'T1 edge', '150').read('23:00', 'T1 edge', '150');
    expect(told(written, '23:10')).toEqual([
      ['nobody_looked', ms('20:00'), ms('20:30')],
      ['seen', ms('20:30'), ms('23:00')],
      ['nobody_looked', ms('23:00'), ms('23:10')],
      ['ahead', ms('23:10'), ms('01:00')],
    ]);
  });

  it('stays open between looks that are further apart', () => {
    const written = held().read('20:30', 'T1 edge', '150').read('23:00:01', 'T1 edge', '150');
    expect(told(written, '23:10')[1]).toEqual(['nobody_looked', ms('20:30'), ms('23:00:01')]);
  });

  it('is open from the last good look to one under, whatever its length, and under from there to the next good one', () => {
    const written = held()
      .read('20:30', 'T1 edge', '150')
      .read('20:40', 'T1 edge', '131')
      .read('21:10', 'T1 edge', '144');
    expect(told(written, '21:20').slice(0, 4)).toEqual([
      ['nobody_looked', ms('20:00'), ms('20:30')],
      ['nobody_looked', ms('20:30'), ms('20:40')],
      ['under', ms('20:40'), ms('21:10')],
      ['nobody_looked', ms('21:10'), ms('21:20')],
    ]);
  });

  it('stays under when only the core was found warm', () => {
    const written = held().read('20:30', 'T1 edge', '131').read('21:10', 'T1 core', '150');
    expect(told(written, '21:20').at(1)).toEqual(['under', ms('20:30'), ms('21:20')]);
  });

  it('waves at a suspect reading and counts it as no look', () => {
    const written = held()
      .read('20:30', 'T1 edge', '150')
      .read('21:00', 'T1 edge', '150', { probe: 'blue' })
      .ice('21:10', 'blue', '40');
    const line = drawn(written, '21:20');
    expect(line.stretches.filter(({ kind }) => kind === 'suspect')).toEqual([
      { kind: 'suspect', from: ms('21:00'), to: ms('21:00') },
    ]);
    expect(line.seenMin).toBe(0);
  });

  it('counts seen and not looked to the last look while the step goes on, to the end when it ended', () => {
    const written = held().read('20:30', 'T1 edge', '150').read('21:30', 'T1 edge', '150');
    expect(drawn(written, '23:00')).toMatchObject({ seenMin: 60, nobodyLookedMin: 30, now: ms('23:00') });
    written.gone('22:00', 'T', null);
    expect(drawn(written, '23:00')).toMatchObject({
      seenMin: 60,
      nobodyLookedMin: 60,
      now: null,
      dueAt: null,
    });
  });

  it('says at least and at most how long it was under, as the judge does', () => {
    const written = held()
      .read('20:30', 'T1 edge', '150')
      .read('20:40', 'T1 edge', '131')
      .read('20:50', 'T1 edge', '132')
      .read('21:10', 'T1 edge', '144');
    expect(drawn(written, '21:20')).toMatchObject({ underShortestMin: 10, underLongestMin: 40 });
  });

  it('is witnessed by a logger where its readings leave no gap over five minutes', () => {
    const written = held();
    for (const clock of ['20:00', '20:05', '20:10'])
      written.read(clock, 'T1 coldest', '150', { source: 'logger' });
    expect(drawn(written, '20:11').stretches[0]).toEqual({
      kind: 'seen',
      from: ms('20:00'),
      to: ms('20:10'),
      witness: 'logger',
    });
  });

  it('calls nothing seen where no plan says how often is enough', () => {
    const written = night()
      .batch('18:00', 'T', 1, 'turkey')
      .step('20:00', 'T', 'hot_hold', 'cab1')
      .read('20:00', 'T1 edge', '150')
      .read('20:10', 'T1 edge', '150');
    expect(drawn(written, '20:20').seenMin).toBe(0);
  });
});
