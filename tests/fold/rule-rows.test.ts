import { describe, expect, it } from 'vitest';
import type { Book } from '#lib/fold/book.ts';
import { restsOn } from '#lib/fold/rests-on.ts';
import { rowsApart, ruleRows } from '#lib/fold/rule-rows.ts';
import { night } from './night.ts';

const rows = (book: Book) => {
  const batch = book.batches.get('T');
  return batch ? ruleRows(batch) : [];
};

const held = () => night().batch('18:00', 'T', 2, 'turkey').step('19:00', 'T', 'hot_hold', 'cab1');

describe('the rules of a batch, one row each', () => {
  it('stand worst first, and witness after the rules', () => {
    const book = held()
      .read('20:00', 'T1 edge', '150')
      .step('21:00', 'T', 'cooling', 'ice')
      .read('21:05', 'T1 warmest', '134')
      .read('23:10', 'T1 warmest', '90')
      .book('23:20');
    expect(rows(book).map(({ step, stage, judged }) => [step, stage, judged.verdict])).toEqual([
      ['cooling', 'stage_1', 'broken'],
      ['cooling', 'total', 'not_shown'],
      ['hot_hold', 'at_readings', 'kept'],
      ['hot_hold', 'between_readings', 'not_shown'],
    ]);
  });

  it('set the kept rules of earlier steps apart, and none that is not kept or of the last step', () => {
    const book = held()
      .read('20:00', 'T1 edge', '150')
      .step('21:00', 'T', 'cooling', 'ice')
      .read('21:05', 'T1 warmest', '134')
      .read('22:50', 'T1 warmest', '69')
      .book('23:00');
    const batch = book.batches.get('T');
    const said = (list: ReturnType<typeof ruleRows>) => list.map(({ step, stage }) => `${step} ${stage}`);
    const apart = batch && rowsApart(batch);
    expect(apart && said(apart.earlier)).toEqual(['hot_hold at_readings']);
    expect(apart && said(apart.now)).toEqual([
      'cooling stage_1',
      'cooling total',
      'hot_hold between_readings',
    ]);
    const alone = held().read('20:00', 'T1 edge', '150').book('20:10').batches.get('T');
    expect(alone && rowsApart(alone).earlier).toEqual([]);
  });

  it('say "at the thick part only" where only that was read', () => {
    const kept = (book: Book) => rows(book).find(({ stage }) => stage === 'at_readings')?.thickPartOnly;
    expect(kept(held().read('20:00', 'T1 core', '150').book('20:10'))).toBe(true);
    expect(kept(held().read('20:00', 'T1 core', '150').read('20:04', 'T1 edge', '149').book('20:10'))).toBe(
      false,
    );
    expect(kept(held().read('20:00', 'T1 edge', '150').book('20:10'))).toBe(false);
  });

  it('name the looks on which they rest', () => {
    const book = held()
      .read('20:00', 'T1 edge', '150')
      .read('20:01', 'T2 edge', '130')
      .read('20:30', 'T1 edge', '151')
      .book('21:00');
    const run = book.batches.get('T')?.runs[0];
    const stage = run?.stages.at_readings;
    expect(run && stage && restsOn(run, stage).map(({ typed }) => typed)).toEqual(['130']);
    const own = run?.byPiece.find(({ piece }) => piece === 1)?.stages.at_readings;
    expect(run && own && restsOn(run, own).map(({ typed }) => typed)).toEqual(['150', '151']);
  });

  it('count the pieces that were read', () => {
    const row = rows(held().read('20:00', 'T1 edge', '150').book('21:00')).find(
      ({ stage }) => stage === 'at_readings',
    );
    expect(row?.judged.pieces_read).toBe(1);
    expect(row?.judged.reasons).toContain('some_pieces_unread');
    expect(row?.byPiece.map(({ piece, judged }) => [piece, judged.verdict])).toEqual([
      [1, 'kept'],
      [2, 'not_shown'],
    ]);
  });
});
