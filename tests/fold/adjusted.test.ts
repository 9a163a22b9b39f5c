import { describe, expect, it } from 'vitest';
import type { Body } from '#shared/entries/entry.ts';
import { ms, night } from './night.ts';

const adjusted = (correction: number | null): Body<'probe_adjusted'> => ({
  probe: 'red',
  correction,
  unit: 'degF',
  reason: 'ice and boiling water of today',
});

describe('an adjustment of a thermometer', () => {
  const written = night()
    .add('probe_adjusted', '18:00', adjusted(-1.5))
    .add('probe_adjusted', '20:00', adjusted(-1))
    .add('probe_adjusted', '23:00', adjusted(null));

  it('stands from its moment until the next one, with who wrote it and why', () => {
    expect(written.book('17:30').kitchen.adjusted?.get('red')).toBeUndefined();
    expect(written.book('19:00').kitchen.adjusted?.get('red')).toMatchObject({
      body: { correction: -1.5, reason: 'ice and boiling water of today' },
      by: 'cook',
      at: ms('18:00'),
    });
    expect(written.book('21:00').kitchen.adjusted?.get('red')?.body.correction).toBe(-1);
    expect(written.book('23:30').kitchen.adjusted?.get('red')?.body.correction).toBeNull();
    expect(written.book('23:30').kitchen.adjusted?.get('blue')).toBeUndefined();
  });

  it('changes no reading that was taken without it; one that carries it counts by the worse of the two', () => {
    const verdict = (correction: number | null) =>
      night()
        .batch('17:00', 'A', 1, 'turkey')
        .step('17:05', 'A', 'hot_hold', 'cab1')
        .read('18:00', 'A1 edge', '136', { correction })
        .add('probe_adjusted', '19:00', adjusted(-1.5))
        .book('19:30')
        .batches.get('A')?.runs[0]?.stages.at_readings?.verdict;
    expect(verdict(null)).not.toBe('broken'); // 136 stays 136
    expect(verdict(-1.5)).toBe('broken'); // 134.5
    expect(verdict(1.5)).not.toBe('broken'); // the typed one is the worse
  });
});
