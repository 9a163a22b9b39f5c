import { describe, expect, it } from 'vitest';
import { kitchenNow } from '#lib/fold/kitchen-now.ts';
import { roundDue, roundPlan } from '#lib/fold/round-plan.ts';
import type { RoundLook } from '#lib/fold/views.ts';
import type { Body } from '#shared/entries/entry.ts';
import { ms, type Night, night } from './night.ts';

const every120 = { every_min: 120, at_most_min: 140 };

/** Brisket 1 to 4 in cabinet 1, read 22:00 to 22:03; the third is the coldest. */
const held = (looks: Body<'plan'>['looks']): Night =>
  night()
    .plan('hot_hold', ['cab1'], { ...every120, looks, spots: ['edge', 'core'] })
    .batch('18:00', 'A', 4)
    .step('21:50', 'A', 'hot_hold', 'cab1')
    .read('22:00', 'A1 edge', '152.0')
    .read('22:01', 'A2 edge', '151.0')
    .read('22:02', 'A3 edge', '147.5')
    .read('22:03', 'A4 edge', '150.0');

const food = (looks: RoundLook[]) =>
  looks.filter(({ batch }) => batch !== null).map(({ piece, asked }) => [piece, asked.join()]);

describe('when a round is due', () => {
  const at = (clock: string) => roundDue(held('every_piece').book(clock));

  it('is due at "every", at latest at "at most", both from the last look', () => {
    expect(at('22:30')).toMatchObject({ dueAt: ms('00:03'), latestAt: ms('00:23'), state: 'quiet' });
  });

  it('is prompted 20 minutes before the interval ends and pressed 5 minutes before', () => {
    expect(at('00:02:59')?.state).toBe('quiet');
    expect(at('00:03')?.state).toBe('prompted');
    expect(at('00:17:59')?.state).toBe('prompted');
    expect(at('00:18')?.state).toBe('pressed');
    expect(at('00:23')?.state).toBe('pressed');
    expect(at('00:23:01')?.state).toBe('overdue');
  });

  it('is pulled by the earliest of all', () => {
    const written = held('every_piece')
      .plan('hot_hold', ['cab2'], { every_min: 60, at_most_min: 60 })
      .batch('22:10', 'B', 1)
      .step('22:10', 'B', 'hot_hold', 'cab2');
    expect(roundDue(written.book('22:20'))).toMatchObject({ dueAt: ms('23:10'), latestAt: ms('23:10') });
  });

  it('counts a suspect look as none', () => {
    const written = held('every_piece')
      .read('23:00', 'A1 edge', '155', { probe: 'blue' })
      .ice('23:10', 'blue', '40');
    expect(roundDue(written.book('23:20'))?.dueAt).toBe(ms('00:03'));
  });

  it('asks nothing where no plan does', () => {
    const book = night().batch('18:00', 'A', 1).step('18:00', 'A', 'hot_hold', 'cab1').book('19:00');
    expect(roundDue(book)).toBeNull();
  });

  it('follows the checkpoints of a cooling, counted from its start', () => {
    const cooling = night()
      .plan('cooling', [], { checkpoints_min: [0, 60, 120, 240, 360] })
      .batch('18:00', 'P', 1, 'pulled')
      .step('18:00', 'P', 'cooling', 'ice')
      .read('18:02', 'P1 warmest', '150');
    expect(roundDue(cooling.book('18:10'))?.dueAt).toBe(ms('19:00'));
    // A look ten minutes before its checkpoint is that checkpoint's.
    expect(roundDue(cooling.read('18:52', 'P1 warmest', '100').book('18:55'))?.dueAt).toBe(ms('20:00'));
  });
});

describe('what a round asks', () => {
  it('reads the air of a cabinet before its food', () => {
    const [first] = roundPlan(held('every_piece').book('00:00')).looks;
    expect([first?.batch, first?.spots]).toEqual([null, ['air']]);
  });

  it('asks for the watch piece only: the coldest at the last look', () => {
    expect(food(roundPlan(held('watch_piece').book('00:00')).looks)).toEqual([[3, 'edge,core']]);
  });

  it('asks for a new watch piece when that one is pulled', () => {
    const written = held('watch_piece').gone('23:00', 'A', [3]);
    expect(food(roundPlan(written.book('00:00')).looks)).toEqual([[4, 'edge,core']]);
  });

  it('asks for every thin end and the thick part of every second piece', () => {
    expect(food(roundPlan(held('thin_ends_and_every_second_thick').book('00:00')).looks)).toEqual([
      [1, 'edge,core'],
      [2, 'edge'],
      [3, 'edge,core'],
      [4, 'edge'],
    ]);
  });

  it('does not ask again for what was read in this round', () => {
    const written = held('thin_ends_and_every_second_thick')
      .read('00:01', 'A1 edge', '150', { round: 'r1' })
      .read('00:02', 'A2 edge', '150', { round: 'r1' });
    expect(food(roundPlan(written.book('00:05'), 'r1').looks)).toEqual([
      [1, 'core'],
      [3, 'edge,core'],
      [4, 'edge'],
    ]);
    expect(food(roundPlan(written.book('00:05'), null).looks)).toHaveLength(4);
  });

  it('names the places of its keys by food and step', () => {
    const written = night()
      .batch('18:00', 'A', 1)
      .step('18:00', 'A', 'hot_hold', 'cab1')
      .batch('18:00', 'N', null, 'beans')
      .step('18:00', 'N', 'hot_hold', 'steam')
      .batch('18:00', 'P', 1, 'pulled')
      .step('18:00', 'P', 'cooling', 'ice')
      .batch('18:00', 'R', 1, 'pulled')
      .step('18:00', 'R', 'reheat', 'oven');
    const looks = roundPlan(written.book('18:30')).looks.filter(({ batch }) => batch !== null);
    expect(Object.fromEntries(looks.map(({ batch, spots }) => [batch, spots]))).toEqual({
      A: ['edge', 'core'],
      N: ['coldest'],
      P: ['warmest'],
      R: ['coldest'],
    });
    expect(looks.find(({ batch }) => batch === 'R')?.asksHeld).toBe(15);
    expect(looks.find(({ batch }) => batch === 'A')?.limit).toEqual({
      value: 135,
      unit: 'degF',
      comparison: 'at_or_above',
      section: '3-501.16(A)(1)',
    });
    expect(looks.find(({ batch }) => batch === 'P')?.limit?.value).toBe(70);
  });

  it('leaves empty equipment out and walks in the order of the set-up', () => {
    const written = held('watch_piece')
      .batch('22:00', 'N', null, 'beans')
      .step('22:00', 'N', 'hot_hold', 'steam');
    expect(roundPlan(written.book('22:30')).equipment.map(({ id }) => id)).toEqual(['cab1', 'steam']);
  });

  it('shows the last figures with who read them', () => {
    const [, look] = roundPlan(held('watch_piece').book('00:00')).looks;
    expect(look?.last).toEqual({
      at: ms('22:02'),
      by: 'co',
      figures: [{ spot: 'edge', typed: '147.5', unit: 'degF' }],
    });
    expect([look?.piece, look?.pieceOf]).toEqual([3, 4]);
  });
});

describe('kitchen now', () => {
  const states = (written: Night, clock: string) =>
    kitchenNow(written.book(clock))
      .rows.filter(({ groups, offSince }) => groups.length > 0 || offSince !== null)
      .map(({ equipment, state }) => [equipment, state]);

  it('puts what is under first, then blocked, overdue, a near deadline, due, and the rest', () => {
    const written = night()
      .plan('hot_hold', [], every120)
      .batch('17:30', 'Q', 1, 'turkey')
      .step('23:20', 'Q', 'hot_hold', 'rack')
      .read('23:21', 'Q1 edge', '150')
      .batch('17:30', 'U', 1, 'turkey')
      .step('21:00', 'U', 'hot_hold', 'cab1')
      .read('23:30', 'U1 edge', '120')
      .batch('17:30', 'B', 1, 'turkey')
      .step('21:00', 'B', 'hot_hold', 'cab2')
      .read('23:10', 'B1 edge', '120')
      .read('23:30', 'B1 edge', '140')
      .batch('17:30', 'O', null, 'beans')
      .step('18:00', 'O', 'hot_hold', 'steam')
      .read('18:10', 'O coldest', '150')
      .batch('17:30', 'P', 1, 'pulled')
      .step('21:40', 'P', 'cooling', 'ice')
      .read('21:50', 'P1 warmest', '136')
      .read('22:00', 'P1 warmest', '133')
      .batch('17:30', 'D', 1, 'pulled')
      .step('21:30', 'D', 'hot_hold', 'oven')
      .read('21:32', 'D1 coldest', '150');
    expect(states(written, '23:35')).toEqual([
      ['cab1', 'under'],
      ['cab2', 'blocked'],
      ['steam', 'overdue'],
      ['ice', 'cooling'],
      ['oven', 'due'],
      ['rack', 'quiet'],
    ]);
  });

  it('dresses the figure by what it can still say', () => {
    const dress = (written: Night, clock: string) =>
      kitchenNow(written.book(clock)).rows.find(({ equipment }) => equipment === 'cab1')?.groups[0]?.figure
        ?.dress;
    expect(dress(held('every_piece'), '22:30')).toBe('solid');
    expect(dress(held('every_piece'), '01:00')).toBe('hollow');
    expect(dress(held('every_piece').read('22:20', 'A2 edge', '120'), '22:30')).toBe('cut');
    const wavy = night()
      .batch('18:00', 'A', 1)
      .step('18:00', 'A', 'hot_hold', 'cab1')
      .read('19:00', 'A1 edge', '150', { probe: 'blue' })
      .ice('19:30', 'blue', '40');
    expect(dress(wavy, '19:40')).toBe('wavy');
  });

  it('says first who has to decide, then what to read beside it, then the round', () => {
    const written = held('every_piece').read('00:20', 'A2 edge', '120');
    const { next, undecided } = kitchenNow(written.book('00:50'));
    expect(next.map(({ key }) => key)).toEqual(['decide', 'read_every_piece']);
    expect(next[0]).toMatchObject({ by: ms('00:50'), values: { batch: 'A', pieces: '2' } });
    expect(next[1]?.values).toEqual({ equipment: 'cab1', count: 3 });
    expect(undecided).toBe(1);
  });

  it('says what is off, and since when', () => {
    const written = held('every_piece').add('equipment_off', '22:10', {
      equipment: 'cab1',
      reason: 'breaker',
      since_basis: null,
      text: null,
    });
    const row = kitchenNow(written.book('22:20')).rows[0];
    expect([row?.equipment, row?.state, row?.offSince]).toEqual(['cab1', 'off', ms('22:10')]);
    written.add('equipment_on', '22:30', { equipment: 'cab1', reason: 'breaker', text: null });
    expect(kitchenNow(written.book('22:40')).rows.every(({ offSince }) => offSince === null)).toBe(true);
  });
});

describe('a deadline that passed unseen', () => {
  it('is overdue and asks for a look now', () => {
    const written = night()
      .batch('17:30', 'P', 1, 'pulled')
      .step('18:00', 'P', 'cooling', 'ice')
      .read('18:00', 'P1 warmest', '136')
      .read('18:30', 'P1 warmest', '120');
    const { rows, next } = kitchenNow(written.book('20:10'));
    expect([rows[0]?.state, rows[0]?.groups[0]?.deadline?.at]).toEqual(['overdue', ms('20:00')]);
    expect(next.map(({ key, by }) => [key, by])).toEqual([['reach_by', ms('20:00')]]);
  });

  it('asks no more once a look found it there, in time or not', () => {
    const written = night()
      .batch('17:30', 'P', 1, 'pulled')
      .step('18:00', 'P', 'cooling', 'ice')
      .read('18:00', 'P1 warmest', '136')
      .read('18:30', 'P1 warmest', '120')
      .read('20:09', 'P1 warmest', '68');
    const group = kitchenNow(written.book('20:10')).rows[0]?.groups[0];
    expect([group?.deadline?.stage, group?.deadline?.at]).toEqual(['total', ms('00:00')]);
  });
});
