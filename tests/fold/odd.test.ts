import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldBook } from '#lib/fold/fold-book.ts';
import { kitchenNow } from '#lib/fold/kitchen-now.ts';
import { roundPlan } from '#lib/fold/round-plan.ts';
import type { Entry } from '#shared/entries/entry.ts';
import { demoEntries, saturday } from './demo-book.ts';
import { ms, night } from './night.ts';
import { oddWords } from './words-of.ts';

const keys = (written: ReturnType<typeof night>): string[] => written.book('23:59').odd.map(({ key }) => key);
const held = () => night().batch('18:00', 'T', 2, 'turkey').step('19:00', 'T', 'hot_hold', 'cab1');

describe('what does not fit is said and never thrown', () => {
  it.each<[string, ReturnType<typeof night>]>([
    ['reading_after_gone', held().gone('20:00', 'T', [2]).read('21:00', 'T2 edge', '150')],
    ['reading_of_missing_piece', held().read('21:00', 'T9 edge', '150')],
    ['step_of_gone_piece', held().gone('20:00', 'T', [2]).step('21:00', 'T', 'rest', 'rack', [2])],
    ['piece_not_in_batch', held().step('21:00', 'T', 'rest', 'rack', [3])],
    ['unknown_batch', held().read('21:00', 'X1 edge', '150')],
    ['unknown_probe', held().read('21:00', 'T1 edge', '150', { probe: 'pink' })],
    ['unknown_equipment', held().step('21:00', 'T', 'hot_hold', 'cab9')],
    ['unknown_food', night().batch('18:00', 'T', 2, 'hay')],
    ['unknown_person', held().read('21:00', 'T1 edge', '150', {}, { by: 'ghost' })],
    ['deviation_unknown', held().act('21:00', 'deviation-99', 'discard')],
    [
      'equipment_on_without_off',
      held().add('equipment_on', '21:00', { equipment: 'cab1', reason: 'on', text: null }),
    ],
  ])('%s', (key, written) => {
    expect(keys(written)).toEqual([key]);
    for (const words of oddWords(key)) expect(words).not.toBe('');
  });

  it('does not call a look that was made before the piece went odd', () => {
    expect(keys(held().read('19:59', 'T2 edge', '150').gone('20:00', 'T', [2]))).toEqual([]);
  });

  it('judges food whose set-up is not known as the strictest', () => {
    const book = night()
      .batch('18:00', 'T', 1, 'hay')
      .step('18:00', 'T', 'hot_hold', 'cab1')
      .read('18:30', 'T1 edge', '132')
      .book('19:00');
    expect(book.batches.get('T')?.runs[0]?.stages.at_readings?.verdict).toBe('broken');
  });

  it('blocks the whole group when a look under the limit names no piece', () => {
    const book = held().read('21:00', 'T edge', '120', { equipment: 'cab1' }).book('22:00');
    expect(book.batches.get('T')?.pieces.map(({ standing }) => standing)).toEqual([
      'do_not_serve',
      'do_not_serve',
    ]);
  });

  it('ends at a circle of sources', () => {
    const book = night()
      .batch('18:00', 'A', 1, 'brisket', {
        made: 'join',
        source: [{ batch: 'B', pieces: null, words: null }],
      })
      .batch('18:00', 'B', 1, 'brisket', {
        made: 'join',
        source: [{ batch: 'A', pieces: null, words: null }],
      })
      .step('18:00', 'A', 'hot_hold', 'cab1')
      .read('18:30', 'A1 edge', '120')
      .book('19:00');
    expect([...book.batches.keys()]).toEqual(['A', 'B']);
  });

  it('is empty for an empty ledger', () => {
    const book = foldBook([], ms('20:00'));
    expect(book.kitchen.site).toBeNull();
    expect(kitchenNow(book).rows).toEqual([]);
    expect(roundPlan(book)).toEqual({ looks: [], equipment: [], due: null });
  });

  const part = fc.subarray(demoEntries.slice(30), { minLength: 0, maxLength: 250 });

  it('folds any part of a night, in any order, to the same book', () => {
    fc.assert(
      fc.property(
        part,
        fc.integer({ min: 0, max: 24 * 60 }),
        fc.infiniteStream(fc.nat()),
        (entries, ago, noise) => {
          const setUp = demoEntries.slice(0, 30);
          const at = saturday - ago * 60_000;
          const all = [...setUp, ...entries];
          const mixed = all
            .map((entry): [number, Entry] => [noise.next().value ?? 0, entry])
            .sort(([a], [b]) => a - b)
            .map(([, entry]) => entry);
          const book = foldBook(all, at);
          expect(foldBook(mixed, at).deviations).toEqual(book.deviations);
          expect(foldBook(mixed, at).batches).toEqual(book.batches);
          expect(kitchenNow(book).asOf).toBe(at);
          roundPlan(book);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('shows no verdict better when a later moment is asked: broken stays broken', () => {
    const brokenAt = (minutesAgo: number): string[] =>
      [...foldBook(demoEntries, saturday - minutesAgo * 60_000).batches.values()].flatMap(({ id, runs }) =>
        runs.flatMap(({ key, byPiece }) =>
          byPiece.flatMap(({ piece, stages }) =>
            Object.entries(stages).flatMap(([name, stage]) =>
              stage.verdict === 'broken' ? [`${id}/${key}/${piece}/${name}`] : [],
            ),
          ),
        ),
      );
    const last = new Set(brokenAt(0));
    for (const ago of [600, 540, 480, 420, 360, 240, 120])
      for (const one of brokenAt(ago)) expect(last).toContain(one);
  });
});
