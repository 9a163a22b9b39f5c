import { describe, expect, it } from 'vitest';
import { deviationBy } from '#lib/fold/ask.ts';
import type { Book } from '#lib/fold/book.ts';
import { ms, type Night, night } from './night.ts';

/** Turkey 1 and 2 in one cabinet; piece 1 good at 20:00 and under at 21:00. */
const dipped = (rules: Parameters<typeof night>[0] = {}): Night =>
  night(rules)
    .batch('18:00', 'T', 2, 'turkey')
    .step('19:00', 'T', 'hot_hold', 'cab1')
    .read('20:00', 'T1 edge', '150')
    .read('20:01', 'T2 edge', '150')
    .read('21:00', 'T1 edge', '130');

const standing = (book: Book, batch = 'T') => book.batches.get(batch)?.pieces.map((piece) => piece.standing);

describe('a broken rule opens a deviation by itself', () => {
  const written = dipped();
  const reading = written.last;
  const book = written.book('21:30');
  const [deviation] = book.deviations;

  it('has a key made of batch, piece, step, stage and the first reading that decides', () => {
    const step = written.entries.find(({ kind }) => kind === 'step')?.id;
    expect(book.deviations.map(({ ref }) => ref)).toEqual([`T/1/${step}/at_readings/${reading}`]);
  });

  it('answers since when with the last good look, the worst case', () => {
    expect(deviation?.lastGood?.typed).toBe('150');
    expect(deviation?.since).toBe(ms('20:00'));
    expect(deviation?.outLongestMin).toBe(90);
  });

  it('takes the step’s start where no look was good', () => {
    const cold = night()
      .batch('18:00', 'T', 1, 'turkey')
      .step('19:00', 'T', 'hot_hold', 'cab1')
      .read('19:40', 'T1 edge', '120')
      .book('20:00');
    expect(cold.deviations[0]?.lastGood).toBeNull();
    expect(cold.deviations[0]?.since).toBe(ms('19:00'));
  });

  it('blocks the piece and not its neighbour', () => {
    expect(standing(book)).toEqual(['do_not_serve', 'serve']);
  });

  it('does not end when the piece is warm again, but stops being longer', () => {
    const warm = dipped().read('22:00', 'T1 edge', '151').book('23:00');
    expect(standing(warm)).toEqual(['do_not_serve', 'serve']);
    expect(warm.deviations[0]?.state).toBe('open');
    expect(warm.deviations[0]?.untilAt).toBe(ms('22:00'));
    expect(warm.deviations[0]?.outLongestMin).toBe(120);
  });

  it('is not put right by a warm core when the thin end was under', () => {
    const core = dipped().read('22:00', 'T1 core', '151').book('23:00');
    expect(core.deviations[0]?.untilAt).toBeNull();
    expect(core.deviations[0]?.outLongestMin).toBe(180);
  });

  it('keeps its key when a cooling is looked at again after it was shown broken', () => {
    const cooling = night()
      .batch('18:00', 'P', 1, 'pulled')
      .step('18:00', 'P', 'cooling', 'ice')
      .read('18:00', 'P1 warmest', '134')
      .read('20:30', 'P1 warmest', '100');
    const shown = cooling.last;
    const first = cooling.book('20:40').deviations.map(({ ref }) => ref);
    const later = cooling
      .read('20:50', 'P1 warmest', '95')
      .book('21:00')
      .deviations.map(({ ref }) => ref);
    expect(first[0]).toContain(shown);
    expect(later).toEqual(first);
  });

  it('opens none for the house’s own plan', () => {
    const late = night()
      .plan('hot_hold', ['cab1'], { every_min: 60, at_most_min: 60 })
      .batch('18:00', 'T', 1, 'turkey')
      .step('18:00', 'T', 'hot_hold', 'cab1')
      .read('18:10', 'T1 edge', '150')
      .read('22:00', 'T1 edge', '150')
      .book('22:10');
    expect(late.batches.get('T')?.runs[0]?.stages.house_plan_interval?.verdict).toBe('broken');
    expect(late.deviations).toEqual([]);
  });
});

describe('each piece needs an end', () => {
  const ref = (written: Night): string => written.book('23:59').deviations[0]?.ref ?? '';

  it('ends with a discard', () => {
    const written = dipped();
    const book = written.act('21:10', ref(written), 'discard').book('22:00');
    expect(book.deviations[0]?.ends.map(({ end, at }) => [end, at])).toEqual([['discarded', ms('21:10')]]);
    expect(book.deviations[0]?.state).toBe('closed');
    expect(book.deviations[0]?.outLongestMin).toBe(70);
  });

  it('ends when the piece is gone', () => {
    const book = dipped().gone('21:20', 'T', [1], 'discarded').book('22:00');
    expect(book.deviations[0]?.ends.map(({ end }) => end)).toEqual(['discarded']);
  });

  it('is only decided, and stays blocked, while a reheat goes on as protection', () => {
    const written = dipped();
    const book = written
      .act('21:10', ref(written), 'reheat', { decided_by: 'cook', decided_via: 'own_duty' })
      .step('21:11', 'T', 'reheat', 'oven', [1])
      .read('22:00', 'T1 coldest', '170', { held_s: 15 })
      .book('22:10');
    expect(book.deviations[0]?.state).toBe('decided');
    expect(standing(book)).toEqual(['do_not_serve', 'serve']);
  });

  it('ends with a manager’s release, and not with a cook’s', () => {
    const byCook = dipped();
    byCook.decide('21:10', ref(byCook), 'release', { decided_by: 'cook' });
    expect(standing(byCook.book('22:00'))).toEqual(['do_not_serve', 'serve']);
    const byBoss = dipped();
    byBoss.decide('21:10', ref(byBoss), 'release');
    expect(standing(byBoss.book('22:00'))).toEqual(['serve', 'serve']);
    expect(byBoss.book('22:00').deviations[0]?.ends[0]?.end).toBe('released');
  });

  it('lets a lead release only where the house says so', () => {
    for (const [decides, expected] of [
      ['manager', 'do_not_serve'],
      ['lead', 'serve'],
    ] as const) {
      const written = dipped({ decides });
      written.decide('21:10', ref(written), 'release', { decided_by: 'yes' });
      expect(standing(written.book('22:00'))?.[0]).toBe(expected);
    }
  });

  it('opens another when a released piece is under again in the same step', () => {
    const written = dipped();
    written
      .decide('21:10', ref(written), 'release')
      .read('22:00', 'T1 edge', '149')
      .read('23:00', 'T1 edge', '128');
    const again = written.last;
    const book = written.book('23:10');
    expect(book.deviations.map(({ state }) => state)).toEqual(['open', 'closed']);
    expect(book.deviations[0]?.ref).toContain(again);
    expect(standing(book)).toEqual(['do_not_serve', 'serve']);
  });

  const reheated = (rules: Parameters<typeof night>[0], begins: string) =>
    night(rules)
      .batch('18:00', 'T', 1, 'turkey')
      .step('18:30', 'T', 'hot_hold', 'cab1')
      .read('20:00', 'T1 edge', '140')
      .read('21:00', 'T1 edge', '40')
      .step(begins, 'T', 'reheat', 'oven')
      .read(begins, 'T1 coldest', '40')
      .read('23:00', 'T1 coldest', '166', { held_s: 15 })
      .book('23:10');

  it('ends with a kept reheat where the house lets it, begun in time', () => {
    const book = reheated({ reheat_may_return: true, reheat_within_min: 120 }, '21:30');
    expect(standing(book)).toEqual(['serve']);
    expect(book.deviations[0]?.ends[0]?.end).toBe('reheated');
  });

  it('does not end with a reheat that began later than the house allows, or where it allows none', () => {
    expect(standing(reheated({ reheat_may_return: true, reheat_within_min: 120 }, '22:30'))).toEqual([
      'do_not_serve',
    ]);
    expect(standing(reheated({ reheat_may_return: false }, '21:30'))).toEqual(['do_not_serve']);
  });
});

describe('a person’s deviation and the judge’s about the same food are one', () => {
  it('keeps the person’s, and the judge’s key leads to it', () => {
    const written = dipped();
    const found = written.last;
    const key = written.book('21:01').deviations[0]?.ref ?? '';
    written.deviation('21:05', 'T', [1], { found, step: 'hot_hold' });
    const byHand = written.last;
    const book = written.act('21:10', key, 'discard').book('22:00');
    expect(book.deviations.map(({ ref, aliases }) => [ref, aliases])).toEqual([[byHand, [key]]]);
    expect(deviationBy(book, key)?.actions).toHaveLength(1);
    expect(book.deviations[0]?.since).toBe(ms('20:00'));
  });

  it('links by place and piece when the person named no reading', () => {
    const book = dipped().deviation('21:05', 'T', [1]).book('22:00');
    expect(book.deviations).toHaveLength(1);
    expect(book.deviations[0]?.section).toBe('3-501.16(A)(1)');
  });

  it('blocks food for which the judge opened nothing', () => {
    const book = dipped().deviation('21:05', 'T', [2]).book('22:00');
    expect(book.deviations).toHaveLength(2);
    expect(standing(book)).toEqual(['do_not_serve', 'do_not_serve']);
  });

  it('lets a taken back one block nothing', () => {
    const written = dipped().deviation('21:05', 'T', [2]);
    const book = written.amend('21:06', written.last, 'struck', 'true').book('22:00');
    expect(standing(book)).toEqual(['do_not_serve', 'serve']);
  });
});

describe('a decision by phone', () => {
  const phoned = (): { written: Night; action: string; key: string } => {
    const written = dipped();
    const key = written.book('21:01').deviations[0]?.ref ?? '';
    written.decide('21:10', key, 'release', { decided_via: 'phone' });
    return { written, action: written.last, key };
  };

  it('holds, and waits for its maker', () => {
    const { written, action } = phoned();
    const book = written.book('22:00');
    expect(standing(book)).toEqual(['serve', 'serve']);
    expect(book.deviations[0]?.unconfirmed).toEqual([action]);
  });

  it('is confirmed by its maker’s own sign-in, and by nobody else or by a tap', () => {
    const confirm = (by: string, known: 'secret' | 'tap') => {
      const { written, action, key } = phoned();
      written.decide('08:00', key, 'confirm', { confirms: action }, { by, known });
      return written.book('09:00').deviations[0]?.unconfirmed;
    };
    expect(confirm('boss', 'secret')).toEqual([]);
    expect(confirm('boss', 'tap')).toHaveLength(1);
    expect(confirm('cook', 'secret')).toHaveLength(1);
  });
});

describe('a block passes on', () => {
  const cutFrom = (clock: string) =>
    dipped()
      .batch(clock, 'C', 2, 'pulled', { made: 'cut', source: [{ batch: 'T', pieces: [1], words: null }] })
      .step(clock, 'C', 'hot_hold', 'cab2')
      .gone(clock, 'T', [1], 'used_up')
      .book('22:00');

  it('to pans that are cut from a blocked piece, which the deviation then waits for', () => {
    const book = cutFrom('21:30');
    expect(standing(book, 'C')).toEqual(['do_not_serve', 'do_not_serve']);
    expect(book.deviations[0]?.ends.map(({ batch, piece, end }) => [batch, piece, end])).toEqual([
      [null, 1, 'gone'],
      ['C', 1, null],
      ['C', 2, null],
    ]);
  });

  it('not to what was cut before it was found', () => {
    expect(standing(cutFrom('20:30'), 'C')).toEqual(['serve', 'serve']);
  });

  it('not from the neighbour', () => {
    const book = dipped()
      .batch('21:30', 'C', 1, 'pulled', { made: 'cut', source: [{ batch: 'T', pieces: [2], words: null }] })
      .book('22:00');
    expect(standing(book, 'C')).toEqual(['serve']);
  });
});

describe('a thermometer that fails its check', () => {
  const failed = (): Night =>
    night()
      .ice('17:10', 'blue', '32')
      .batch('18:00', 'T', 1, 'turkey')
      .step('18:00', 'T', 'hot_hold', 'cab1')
      .read('17:09', 'T1 edge', '150', { probe: 'blue' })
      .read('20:00', 'T1 edge', '150', { probe: 'blue' })
      .read('20:01', 'T1 core', '150', { probe: 'red' })
      .ice('21:00', 'blue', '35')
      .read('21:30', 'T1 edge', '150', { probe: 'blue' });

  it('makes suspect what it read since its last good check, also after the failed one', () => {
    const book = failed().book('22:00');
    const suspect = [...book.suspect].map((id) => book.looks.get(id)?.at);
    expect(suspect).toEqual([ms('20:00'), ms('21:30')]);
  });

  it('clears with the next good check what is read after it', () => {
    const book = failed()
      .ice('22:00', 'blue', '32')
      .read('22:30', 'T1 edge', '150', { probe: 'blue' })
      .book('23:00');
    expect([...book.suspect]).toHaveLength(2);
  });

  it('opens a deviation of its own, which ends with what was done about it', () => {
    const written = failed();
    const check = written.entries.findLast(({ kind }) => kind === 'probe_check')?.id ?? '';
    expect(written.book('22:00').deviations.map(({ ref, state }) => [ref, state])).toEqual([
      [`probe/${check}`, 'open'],
    ]);
    const book = written.act('22:10', `probe/${check}`, 'take_out_of_service').book('22:20');
    expect(book.deviations[0]?.state).toBe('closed');
  });
});

describe('a deviation that was let go covers nothing that is found later', () => {
  it('opens another when food released on a person’s deviation goes under afterwards', () => {
    const written = night()
      .batch('18:00', 'T', 1, 'turkey')
      .step('19:00', 'T', 'hot_hold', 'cab1')
      .read('20:00', 'T1 edge', '150')
      .deviation('20:10', 'T', [1]);
    written.decide('20:30', written.last, 'release').read('22:00', 'T1 edge', '120');
    const book = written.book('22:10');
    expect(book.deviations.map(({ opened, state }) => [opened, state])).toEqual([
      ['by_the_judge', 'open'],
      ['by_hand', 'closed'],
    ]);
    expect(standing(book)).toEqual(['do_not_serve']);
  });

  it('takes the last good look over a later time that a person gave', () => {
    const written = night()
      .batch('18:00', 'T', 1, 'turkey')
      .step('19:00', 'T', 'hot_hold', 'cab1')
      .read('20:00', 'T1 edge', '150');
    const book = written
      .deviation('22:00', 'T', [1], { since: new Date(ms('21:30')).toISOString(), last_good: written.last })
      .book('22:10');
    expect(book.deviations[0]?.lastGood?.at).toBe(ms('20:00'));
    expect(book.deviations[0]?.since).toBe(ms('20:00'));
  });
});
