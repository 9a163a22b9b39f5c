import { v7 } from 'uuid';
import { describe, expect, it } from 'vitest';
import { kinds } from '#shared/entries/entry.ts';
import { night } from './night.ts';

const held = () =>
  night()
    .batch('18:00', 'T', 2, 'turkey')
    .step('18:00', 'T', 'hot_hold', 'cab1')
    .read('19:00', 'T1 edge', '1450');

const looks = (written: ReturnType<typeof held>) =>
  written
    .book('23:00')
    .batches.get('T')
    ?.runs[0]?.looks.map(({ typed, piece }) => [typed, piece]);

describe('an amendment says what was meant', () => {
  it('corrects a figure and keeps both (demand:16 demand:17)', () => {
    const written = held();
    const id = written.last;
    const book = written.amend('19:30', id, 'value', '145.0').book('20:00');
    expect(book.looks.get(id)).toMatchObject({
      value: 145,
      typed: '145.0',
      amended: { field: 'value', to: '145.0' },
    });
    expect(book.entries.get(id)?.body).toMatchObject({ value: 1450, typed: '1450' });
  });

  it.each(['', '   '])('is not taken without a reason: "%s" (demand:18)', (reason) => {
    const written = held();
    const draft = written.amend('19:30', written.last, 'value', '145.0').entries.at(-1);
    if (draft?.kind !== 'amendment') throw new Error('the last entry is the amendment');
    const { issues } = kinds.amendment.body.safeParse({ ...draft.body, target: v7(), reason }).error ?? {};
    expect(issues?.map((issue) => issue.path.join('.'))).toEqual(['reason']);
  });

  it('moves a look to the right piece', () => {
    const written = held();
    expect(looks(written.amend('19:30', written.last, 'piece', '2'))).toEqual([['1450', 2]]);
  });

  it('takes a look back, remembers it, and can be taken back itself', () => {
    const written = held();
    const id = written.last;
    written.amend('19:30', id, 'struck', 'true');
    expect(looks(written)).toEqual([]);
    expect(written.book('20:00').struck.has(id)).toBe(true);
    written.amend('19:40', written.last, 'struck', 'true');
    expect(looks(written)).toEqual([['1450', 1]]);
  });

  it('moves "gone" to an hour ago', () => {
    const written = held().gone('21:00', 'T', [1]);
    const book = written.amend('21:01', written.last, 'at', '2026-05-08T20:00:00Z').book('22:00');
    expect(book.batches.get('T')?.pieces[0]?.end?.at).toBe(Date.parse('2026-05-08T20:00:00Z'));
  });

  it('takes a decimal comma for a decimal point', () => {
    const written = held();
    expect(
      written
        .amend('19:30', written.last, 'value', '145,5')
        .book('20:00')
        .looks.get(written.entries.at(-2)?.id ?? '')?.value,
    ).toBe(145.5);
  });

  it.each([
    ['of what is not there', 'reading-99', 'value', '145', 'amendment_of_unknown'],
    ['that cannot be read', null, 'value', 'warm', 'amendment_unreadable'],
  ] as const)('%s is said, and changes nothing', (_, target, field, to, key) => {
    const written = held();
    const book = written.amend('19:30', target ?? written.last, field, to).book('20:00');
    expect(book.odd.map((odd) => odd.key)).toEqual([key]);
    expect([...book.looks.values()].map(({ value }) => value)).toEqual([1450]);
  });

  it('of a field that the entry lacks is said', () => {
    const written = held();
    const step = written.entries.find(({ kind }) => kind === 'step')?.id ?? '';
    expect(
      written
        .amend('19:30', step, 'value', '3')
        .book('20:00')
        .odd.map(({ key }) => key),
    ).toEqual(['amendment_no_field']);
  });

  it('counts for a day that was over before it was written', () => {
    const written = held();
    written.amend('08:00', written.last, 'value', '145');
    const asOf = Date.parse('2026-05-08T23:00:00Z');
    expect([...written.book({ asOf }).looks.values()][0]?.value).toBe(145);
    expect([...written.book({ asOf, knownUntil: asOf }).looks.values()][0]?.value).toBe(1450);
  });

  it('marks a look late that was typed long after', () => {
    const written = held().read('20:00', 'T1 edge', '150', {}, { entered_at: '2026-05-08T20:15:01Z' });
    written.read('21:00', 'T1 edge', '150', {}, { entered_at: '2026-05-08T21:15:00Z' });
    expect([...written.book('22:00').looks.values()].map(({ late }) => late)).toEqual([false, true, false]);
  });
});
