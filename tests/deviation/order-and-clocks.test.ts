import { describe, expect, test } from 'vitest';
import { reheatClocks } from '#app/deviation/reheat-clocks.ts';
import { stillMissing } from '#app/deviation/still-missing.ts';
import { worstFirst } from '#app/deviation/worst-first.ts';
import type { Deviation } from '#lib/fold/book.ts';

const deviation = (over: Partial<Deviation>): Deviation => ({
  ref: 'r',
  aliases: [],
  opened: 'by_the_judge',
  entry: null,
  batch: null,
  pieces: null,
  step: 'hot_hold',
  stage: 'at_readings',
  run: null,
  equipment: null,
  probe: null,
  section: '3-501.16(A)(1)',
  foundAt: 0,
  found: null,
  lastGood: null,
  since: null,
  untilAt: null,
  outLongestMin: 0,
  outShortestMin: 0,
  actions: [],
  decisions: [],
  ends: [],
  unconfirmed: [],
  state: 'open',
  ...over,
});

test('deviations are listed worst first: open, then longest out of control, not known being the longest', () => {
  const list = [
    deviation({ ref: 'closed', state: 'closed', outLongestMin: null }),
    deviation({ ref: 'short', outLongestMin: 12 }),
    deviation({ ref: 'decided', state: 'decided', outLongestMin: 900 }),
    deviation({ ref: 'unknown-later', outLongestMin: null, foundAt: 9 }),
    deviation({ ref: 'unknown', outLongestMin: null, foundAt: 5 }),
    deviation({ ref: 'long', outLongestMin: 222 }),
  ];
  expect(worstFirst(list).map((each) => each.ref)).toEqual([
    'unknown',
    'unknown-later',
    'long',
    'short',
    'decided',
    'closed',
  ]);
});

describe('both clocks of a corrective reheat are shown', () => {
  // Last good look 01:32, found 03:11, 166.1 °F at 04:50: 3 h 18 min and 1 h 39 min.
  const at = (clock: string) => Date.parse(`2026-10-17T${clock}:00-05:00`);

  test('from the last good look and from the finding', () => {
    expect(reheatClocks(at('01:32'), at('03:11'), at('04:50'))).toEqual({
      fromLastGoodMin: 198,
      fromFindingMin: 99,
    });
  });

  test('without a good look the first clock is not known', () => {
    expect(reheatClocks(null, at('03:11'), at('04:50')).fromLastGoodMin).toBeNull();
  });
});

describe('what a deviation still wants before it can close', () => {
  const action = (cause: string | null) =>
    [{ body: { cause } }] as unknown as Deviation['actions']; /* only the cause is read */

  test('nothing done yet: an action, the end of each piece, the cause', () => {
    const piece = { batch: null, piece: 1, end: null, at: null, by: null };
    expect(stillMissing(deviation({ ends: [piece] }))).toEqual(['action', 'ends', 'cause']);
  });

  test('a decision by phone waits for the word of its maker', () => {
    const done = deviation({ actions: action('latch bent'), unconfirmed: ['e'] });
    expect(stillMissing(done)).toEqual(['confirmation']);
  });

  test('everything written: nothing', () => {
    const end = { batch: null, piece: 7, end: 'discarded' as const, at: 1, by: 'p' };
    expect(stillMissing(deviation({ actions: action('latch bent'), ends: [end] }))).toEqual([]);
  });
});
