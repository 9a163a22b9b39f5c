import { describe, expect, it } from 'vitest';
import { admissionOf } from '#lib/fold/admission.ts';
import { admit } from '#lib/fold/admit.ts';
import type { Draft } from '#shared/entries/entry.ts';
import { ms, type Night, night } from './night.ts';
import { problemWords } from './words-of.ts';

const now = ms('22:00');

const held = (): Night =>
  night()
    .batch('18:00', 'T', 2, 'turkey')
    .step('19:00', 'T', 'hot_hold', 'cab1')
    .read('21:00', 'T1 edge', '150')
    .gone('21:30', 'T', [2]);

const firstOf = (written: Night, kind: string): string =>
  written.entries.find((entry) => entry.kind === kind)?.id ?? '';

/** The last entry of `write` as a draft against the night before it. */
function asked(write: (written: Night) => Night, before: Night = held()): string[] {
  const known = before.entries.length;
  const draft = write(before).entries.at(-1) as Draft;
  const admission = admissionOf(before.entries.slice(0, known));
  return admit(admission, draft, now).map(({ problem }) => problem);
}

describe('a draft is taken or refused for its own reason', () => {
  it('takes a plain look, a look five minutes ahead, and a late one of a piece that is gone since', () => {
    expect(asked((n) => n.read('21:59', 'T1 edge', '149'))).toEqual([]);
    expect(asked((n) => n.read('22:05', 'T1 edge', '149'))).toEqual([]);
    expect(asked((n) => n.read('21:10', 'T2 edge', '149'))).toEqual([]);
  });

  it.each<[string, (n: Night) => Night]>([
    ['reading_future', (n) => n.read('22:05:01', 'T1 edge', '149')],
    ['entry_future', (n) => n.gone('22:06', 'T', [1])],
    ['unknown_equipment', (n) => n.read('21:59', 'T1 edge', '149', { equipment: 'cab9' })],
    ['unknown_probe', (n) => n.read('21:59', 'T1 edge', '149', { probe: 'pink' })],
    ['unknown_batch', (n) => n.read('21:59', 'X1 edge', '149')],
    ['unknown_food', (n) => n.batch('21:59', 'B', 2, 'hay')],
    ['unknown_person', (n) => n.act('21:59', 'probe/x', 'repair', { decided_by: 'nobody' })],
    ['wrong_unit', (n) => n.read('21:59', 'T1 edge', '65', { unit: 'degC' })],
    ['no_such_piece', (n) => n.read('21:59', 'T3 edge', '149')],
    ['no_such_piece', (n) => n.step('21:59', 'T', 'rest', 'rack', [7])],
    ['piece_gone', (n) => n.read('21:59', 'T2 edge', '149')],
    ['piece_gone', (n) => n.gone('21:59', 'T', [2])],
    ['duplicate', (n) => n.read('21:00:30', 'T1 edge', '150')],
    ['look_at_no_food', (n) => n.read('21:59', 'T1 edge', '149', { batch: null, piece: null })],
    ['air_of_no_place', (n) => n.read('21:59', 'T1 air', '149', { batch: null, piece: null })],
    ['unknown_entry', (n) => n.amend('21:59', 'reading-99', 'value', '3')],
    ['entry_lacks_field', (n) => n.amend('21:59', firstOf(n, 'step'), 'held_s', '3')],
    ['unknown_deviation', (n) => n.act('21:59', 'deviation-99', 'discard')],
    ['may_not_release', (n) => n.decide('21:59', 'T/1/s/at_readings/r', 'release', { decided_by: 'cook' })],
    ['may_not_release', (n) => n.act('21:59', 'T/1/s/at_readings/r', 'reheat_done', { decided_by: 'yes' })],
    [
      'confirmed_by_another',
      (n) =>
        n.decide(
          '21:59',
          'T/1/s/at_readings/r',
          'confirm',
          { confirms: firstOf(n, 'reading') },
          { by: 'cook' },
        ),
    ],
  ])('%s', (problem, write) => {
    expect(asked(write)).toEqual([problem]);
  });

  it('refuses anything about a batch that is gone, at a time after it went', () => {
    const gone = () => held().gone('21:40', 'T', [1]);
    expect(asked((n) => n.read('21:59', 'T1 edge', '149'), gone())).toEqual(['batch_gone']);
    expect(asked((n) => n.read('21:35', 'T1 edge', '149'), gone())).toEqual([]);
  });

  it('still takes what became of food that is gone', () => {
    expect(
      asked((n) => n.act('21:59', 'T/2/s/at_readings/r', 'discard', { batch: 'T', pieces: [2] })),
    ).toEqual([]);
  });

  it('holds a correction to the same rules: a piece that the batch does not have', () => {
    const written = held();
    const look = written.entries.find(({ kind }) => kind === 'reading')?.id ?? '';
    expect(asked((n) => n.amend('21:59', look, 'piece', '9'), written)).toEqual(['no_such_piece']);
  });

  const kindsNow = () =>
    held()
      .decide('21:40', 'T/1/s/at_readings/r', 'discard')
      .entries.map(({ kind }) => kind);

  it.each([...new Set(kindsNow())])('a %s is taken back only where it was seen or done', (kind) => {
    const written = held().decide('21:40', 'T/1/s/at_readings/r', 'discard');
    const seenOrDone = ['batch', 'step', 'reading'].includes(kind);
    for (const field of ['struck', 'at'] as const)
      expect(
        asked(
          (n) =>
            n.amend(
              '21:59',
              firstOf(n, kind),
              field,
              field === 'struck' ? 'true' : new Date(ms('20:00')).toISOString(),
            ),
          written,
        ),
      ).toEqual(seenOrDone ? [] : ['not_corrected']);
  });

  it('takes a release by a lead where the house says so', () => {
    const lead = night({ decides: 'lead' }).batch('18:00', 'T', 1, 'turkey');
    expect(
      asked((n) => n.decide('21:59', 'T/1/s/at_readings/r', 'release', { decided_by: 'yes' }), lead),
    ).toEqual([]);
  });

  it('lets only a manager or owner sign', () => {
    const sign = (by: string) =>
      asked((n) =>
        n.add(
          'signature',
          '21:59',
          {
            day: '2026-05-08',
            revision: 1,
            from: '2026-05-08T04:00:00Z',
            to: '2026-05-09T04:00:00Z',
            name: by,
            role: 'manager',
            meaning: 'read',
            open_items: [],
            hash: '0'.repeat(64),
            head: null,
          },
          { by },
        ),
      );
    expect(sign('boss')).toEqual([]);
    expect(sign('cook')).toEqual(['may_not_sign']);
  });

  it('does not ask twice about an equal second look once the hand is sure', () => {
    const written = held();
    const admission = admissionOf(written.entries);
    const draft = written.read('21:00:30', 'T1 edge', '150').entries.at(-1) as Draft;
    expect(admit(admission, draft, now, { sure: new Set([draft.id]) })).toEqual([]);
  });

  it('answers the same from a whole book', () => {
    const written = held();
    const book = written.book('22:00');
    const draft = written.read('21:59', 'T2 edge', '149').entries.at(-1) as Draft;
    expect(admit(book, draft, now).map(({ problem }) => problem)).toEqual(['piece_gone']);
  });

  it('has words for every problem and remedy, in both languages', () => {
    const written = held();
    const admission = admissionOf(written.entries);
    const draft = written
      .read('22:30', 'X3 edge', '65', { unit: 'degC', equipment: 'no', probe: 'no' })
      .entries.at(-1);
    const problems = admit(admission, draft as Draft, now);
    expect(problems.length).toBeGreaterThan(3);
    for (const problem of problems) for (const words of problemWords(problem)) expect(words).not.toBe('');
  });
});
