import { describe, expect, it } from 'vitest';
import { foldBook } from '#lib/fold/fold-book.ts';
import type { Entry } from '#shared/entries/entry.ts';
import { demoEntries, saturday } from './demo-book.ts';
import { ms, type Night, night } from './night.ts';
import { oddWords } from './words-of.ts';

const iso = (clock: string): string => new Date(ms(clock)).toISOString();

/** A batch of three on the rack since 19:00, known to both phones. */
const held = () => night().batch('18:00', 'T', 3, 'turkey').step('19:00', 'T', 'hot_hold', 'rack');

type Moved = { at: string; to: string; pieces?: number[] | null; device: string; received?: string };

/** A move that a phone wrote at `at` and sent at `received` (without it: at once). */
const moved = (written: Night, { at, to, pieces = null, device, received = at }: Moved): Night =>
  written.add(
    'step',
    at,
    {
      batch: 'T',
      pieces,
      step: to === 'gone' ? 'gone' : 'hot_hold',
      equipment: to === 'gone' ? null : to,
      details: {},
    },
    { device, received_at: iso(received), by: device === 'phone A' ? 'cook' : 'yes' } as Partial<Entry>,
  );

/** B moves at once at 22:30; A moved at 22:00 without network and is heard of at 23:00. */
const crossed = (a: Partial<Moved> = {}, b: Partial<Moved> = {}) => {
  const online = moved(held(), { at: '22:30', to: 'cab1', device: 'phone B', ...b });
  return moved(online, { at: '22:00', to: 'cab2', device: 'phone A', received: '23:00', ...a });
};

const conflictsIn = (written: Night) =>
  (written.book('23:59').batches.get('T')?.conflicts ?? []).map(({ entries, pieces }) => ({
    phones: entries.map(({ device }) => device),
    pieces,
  }));
const keys = (written: Night) => written.book('23:59').odd.map(({ key }) => key);

describe('two phones that write of the same food without knowing of each other', () => {
  it('are named, both entries, in the order of their times; nothing is overwritten and the later time counts', () => {
    const written = crossed();
    expect(conflictsIn(written)).toEqual([{ phones: ['phone A', 'phone B'], pieces: null }]);
    const book = written.book('23:59');
    expect(keys(written)).toEqual(['steps_crossed']);
    const [first, second] = written.entries.slice(-2).map(({ seq }) => seq); // B's arrived first, A's speaks of before
    expect(book.odd[0]?.values).toMatchObject({ seq: second, other: first });
    for (const words of oddWords('steps_crossed')) expect(words).not.toBe('');
    expect(book.batches.get('T')?.pieces.map(({ equipment }) => equipment)).toEqual(['cab1', 'cab1', 'cab1']);
  });

  it('are named by the pieces that both moved, and not at all when they moved different ones', () => {
    expect(conflictsIn(crossed({ pieces: [1, 2] }, { pieces: [2, 3] }))).toEqual([
      { phones: ['phone A', 'phone B'], pieces: [2] },
    ]);
    expect(conflictsIn(crossed({ pieces: [1] }, { pieces: [2, 3] }))).toEqual([]);
    expect(conflictsIn(crossed({ pieces: [1] }))).toEqual([{ phones: ['phone A', 'phone B'], pieces: [1] }]);
  });

  it('that say the same are at one; two ends of one piece are not', () => {
    expect(conflictsIn(crossed({ to: 'cab1' }))).toEqual([]);
    expect(conflictsIn(crossed({ to: 'gone', pieces: [2] }, { to: 'gone', pieces: [2] }))).toEqual([
      { phones: ['phone A', 'phone B'], pieces: [2] },
    ]);
    expect(conflictsIn(crossed({ to: 'gone', pieces: [2] }))).toEqual([
      { phones: ['phone A', 'phone B'], pieces: [2] },
    ]);
  });

  it('are none when the second could know of the first, to the second; nor on one phone', () => {
    // B's move reached the book at 22:30. What A wrote at 22:30 or later could know it.
    expect(conflictsIn(crossed({ at: '22:29' }))).toHaveLength(1);
    expect(conflictsIn(crossed({ at: '22:30' }))).toEqual([]);
    expect(conflictsIn(crossed({ device: 'phone B' }))).toEqual([]);
  });
});

describe('such a pair is settled by a new entry', () => {
  it('that takes one back, whichever', () => {
    const written = crossed();
    const ids = written.entries.slice(-2).map(({ id }) => id);
    for (const target of ids) {
      const settled = crossed().add('amendment', '23:10', {
        target,
        field: 'struck',
        from: 'false',
        to: 'true',
        reason: 'the other is right',
      });
      expect(conflictsIn(settled)).toEqual([]);
    }
  });

  it('that corrects one', () => {
    const written = crossed();
    const settled = written.add('amendment', '23:10', {
      target: written.last,
      field: 'at',
      from: iso('22:00'),
      to: iso('21:50'),
      reason: 'ten to ten',
    });
    expect(conflictsIn(settled)).toEqual([]);
  });

  it('that says where the food is now, by somebody who could know both; a third blind one makes it three', () => {
    expect(conflictsIn(moved(crossed(), { at: '23:05', to: 'cab2', device: 'phone A' }))).toEqual([]);
    const part = moved(crossed(), { at: '23:05', to: 'cab2', pieces: [1], device: 'phone A' });
    expect(conflictsIn(part)).toHaveLength(1);
    const third = moved(crossed(), { at: '22:10', to: 'rack', device: 'phone C', received: '23:20' });
    expect(conflictsIn(third)).toHaveLength(3);
  });
});

it('the demo night has none: its devices heard of each other', () => {
  const book = foldBook(demoEntries, saturday);
  expect([...book.batches.values()].flatMap(({ conflicts = [] }) => conflicts)).toEqual([]);
});
