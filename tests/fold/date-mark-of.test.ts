import { describe, expect, test } from 'vitest';
import { kitchenNow } from '#lib/fold/kitchen-now.ts';
import { LocalDays } from '#lib/fold/local-days.ts';
import { Weeks, wall, zone } from './weeks.ts';

// 3-501.17(A): 7 days, the day of preparation is day 1. Days are counted by hand on the calendar of October 2026.

describe('seven calendar days of the kitchen, the first one counted', () => {
  const weeks = new Weeks().cooked(16, 'beans');
  test.each([
    ['16 22:00', 'kept 10-22'],
    ['22 23:59', 'kept 10-22'], // in UTC it is the 23rd already
    ['23 00:00', 'broken 10-22'],
    ['30 12:00', 'broken 10-22'],
  ])('on the %s: %s', (at, expected) => {
    expect(weeks.mark(at, 'beans')).toBe(expected);
  });
  test('it is broken from the first minute of the day after, and that is when it was found', () => {
    expect(weeks.run('25 12:00', 'beans')?.stages.date_mark).toMatchObject({
      section: '3-501.17(A)',
      first_bad: wall('23 00:00'),
      open: false,
      next: { action: 'stop_and_tag' },
    });
  });
  test('the night on which clocks change has a day like every other: made 28 October, last day 3 November', () => {
    const autumn = new Weeks().cooked(28, 'beans');
    expect(autumn.mark('34 23:30', 'beans')).toBe('kept 11-03');
    expect(autumn.mark('35 00:00', 'beans')).toBe('broken 11-03');
  });
  test('served in time it stays kept, however late one looks', () => {
    const served = new Weeks().cooked(16, 'beans').step('20 11:00', 'beans', 'reheat', 'oven');
    const cold = served
      .book('30 12:00')
      .batches.get('beans')
      ?.runs.find(({ step }) => step === 'cold_hold');
    expect(cold?.stages.date_mark).toMatchObject({ verdict: 'kept', open: false });
  });
  test('limits that have no such figure say so: California', () => {
    const west = new Weeks({ profile: 'us_ca' }).cooked(16, 'beans');
    expect(west.mark('30 12:00', 'beans')).toBe('not_applicable – no_figure');
  });
});

describe('what the record shows of day 1', () => {
  test('a brisket that went on the 16th and came off the 17th was made on one of the two', () => {
    const night = new Weeks()
      .batch('16 18:00', 'brisket', 'intact_roast')
      .step('16 18:00', 'brisket', 'cook', 'oven')
      .step('17 09:00', 'brisket', 'cold_hold', 'walkin');
    expect(night.mark('22 12:00', 'brisket')).toBe('kept 10-22');
    expect(night.mark('23 12:00', 'brisket')).toBe('not_shown 10-22 disputed');
    expect(night.mark('24 00:00', 'brisket')).toBe('broken 10-22');
  });
  test('what came into the book already made can be broken and never kept', () => {
    const salad = new Weeks()
      .batch('16 11:00', 'salad', 'dairy_side')
      .step('16 11:00', 'salad', 'cold_hold', 'reachin');
    expect(salad.mark('16 12:00', 'salad')).toBe('not_shown 10-22 start_unknown');
    expect(salad.mark('22 12:00', 'salad')).toBe('not_shown 10-22 start_unknown');
    expect(salad.mark('23 00:00', 'salad')).toBe('broken 10-22');
  });
  const noted = (day: string) =>
    new Weeks()
      .batch('16 11:00', 'salad', 'dairy_side')
      .step('16 11:00', 'salad', 'cold_hold', 'reachin', { date_mark: `2026-10-${day}` });
  test('a day that is noted on it is day 1', () => {
    expect(noted('15').mark('21 12:00', 'salad')).toBe('kept 10-21');
    expect(noted('15').mark('22 00:00', 'salad')).toBe('broken 10-21');
  });
  test('a day later than the food itself makes it no younger: the date was copied', () => {
    expect(noted('18').mark('17 12:00', 'salad')).toBe('not_shown 10-22 start_unknown');
    const beans = new Weeks().cooked(16, 'beans').step('20 11:00', 'beans', 'cold_hold', 'reachin', {
      date_mark: '2026-10-20',
    });
    expect(beans.mark('23 00:00', 'beans')).toBe('broken 10-22');
  });
  test('raw food, and food in its sealed package, are not what the rule speaks of', () => {
    const raw = (details: Record<string, unknown>) =>
      new Weeks()
        .batch('16 08:00', 'shoulder', 'intact_roast')
        .step('16 08:00', 'shoulder', 'cold_hold', 'walkin', details);
    expect(raw({ ready_to_eat: false }).mark('30 12:00', 'shoulder')).toBe('not_applicable – no_figure');
    expect(raw({}).mark('30 12:00', 'shoulder')).toBe('not_shown – start_unknown');
    expect(raw({ ready_to_eat: true }).mark('30 12:00', 'shoulder')).toBe('broken 10-22');
    const links = new Weeks()
      .batch('1 08:00', 'links', 'sausage_cooked', { sealed: true })
      .step('1 08:00', 'links', 'cold_hold', 'walkin');
    expect(links.mark('15 12:00', 'links')).toBe('not_applicable – no_figure');
    links.step('16 09:00', 'links', 'reheat', 'oven').step('16 14:00', 'links', 'cold_hold', 'walkin');
    expect(links.mark('22 12:00', 'links')).toBe('kept 10-22'); // opened on the 16th: 3-501.17(B)
    expect(links.mark('23 12:00', 'links')).toBe('broken 10-22');
  });
  test('raw in the cooler and cooked after days: day 1 is the day of the cook', () => {
    const shoulder = new Weeks()
      .batch('10 08:00', 'shoulder', 'intact_roast')
      .step('10 08:00', 'shoulder', 'cold_hold', 'walkin')
      .step('16 05:00', 'shoulder', 'cook', 'oven')
      .step('16 17:00', 'shoulder', 'cold_hold', 'walkin');
    expect(shoulder.mark('22 12:00', 'shoulder')).toBe('kept 10-22');
  });
});

describe('the freezer stops the count', () => {
  // In the cooler on the 16th and 17th, frozen from the 18th to the 25th. Both of those days count:
  // 16, 17, 18, 25, 26, 27, 28. The model code's own example leaves the 18th out and comes to the 29th.
  const frozen = new Weeks()
    .cooked(16, 'beans')
    .step('18 10:00', 'beans', 'cold_hold', 'freezer')
    .step('25 10:00', 'beans', 'cold_hold', 'walkin');
  test.each([
    ['24 12:00', 'kept –'],
    ['28 23:00', 'kept 10-28'],
    ['29 12:00', 'not_shown 10-28 disputed'],
    ['30 00:00', 'broken 10-28'],
  ])('on the %s: %s', (at, expected) => {
    expect(frozen.mark(at, 'beans')).toBe(expected);
  });
  test('frozen when its days were over it is still over', () => {
    const late = new Weeks().cooked(16, 'beans').step('24 10:00', 'beans', 'cold_hold', 'freezer');
    expect(late.mark('26 12:00', 'beans')).toBe('broken 10-22');
  });
});

describe('combined lots take the earliest date', () => {
  const joined = () =>
    new Weeks()
      .cooked(14, 'old')
      .cooked(16, 'young')
      .batch('17 10:00', 'both', 'plant', { from: ['old', 'young'] })
      .step('17 10:00', 'both', 'cold_hold', 'walkin');
  test('of the 14th and the 16th: the 20th is the last day', () => {
    expect(joined().mark('20 12:00', 'both')).toBe('kept 10-20');
    expect(joined().mark('21 00:00', 'both')).toBe('broken 10-20');
  });
  test('heated together they are no younger', () => {
    const chili = joined()
      .step('18 10:00', 'both', 'reheat', 'oven')
      .step('18 15:00', 'both', 'cold_hold', 'walkin');
    expect(chili.mark('21 00:00', 'both')).toBe('broken 10-20');
  });
  test('with one that nobody knows the earliest is not known', () => {
    const mixed = new Weeks()
      .cooked(16, 'young')
      .batch('15 10:00', 'found', 'sauce')
      .step('15 10:00', 'found', 'cold_hold', 'walkin')
      .batch('17 10:00', 'both', 'plant', { from: ['found', 'young'] })
      .step('17 10:00', 'both', 'cold_hold', 'walkin');
    expect(mixed.mark('20 12:00', 'both')).toBe('not_shown 10-21 start_unknown');
    expect(mixed.mark('22 00:00', 'both')).toBe('broken 10-21');
  });
  test('days in the freezer come along', () => {
    const thawed = new Weeks()
      .cooked(16, 'beans')
      .step('17 10:00', 'beans', 'cold_hold', 'freezer')
      .batch('25 10:00', 'pan', 'plant', { from: ['beans'] })
      .step('25 10:00', 'pan', 'cold_hold', 'walkin');
    // 16, 17, then 25, 26, 27, 28, 29.
    expect(thawed.mark('29 12:00', 'pan')).toBe('kept 10-29');
  });
});

describe('what a kitchen sees of it', () => {
  const next = (weeks: Weeks, at: string) => kitchenNow(weeks.book(at)).next.map(({ key }) => key);
  const group = (weeks: Weeks, at: string) =>
    kitchenNow(weeks.book(at)).rows.flatMap(({ groups }) => groups)[0];
  test('nothing while there are days left; on the last day, to use it; then a decision', () => {
    const weeks = new Weeks().cooked(16, 'beans');
    expect(next(weeks, '21 12:00')).not.toContain('use_today');
    expect(group(weeks, '21 12:00')?.useBy).toBeNull();
    expect(next(weeks, '22 12:00')).toContain('use_today');
    expect(group(weeks, '22 12:00')?.useBy).toMatchObject({ state: 'today', lastDay: '2026-10-22' });
    expect(next(weeks, '23 08:00')).toContain('decide');
    expect(next(weeks, '23 08:00')).not.toContain('use_today');
    expect(group(weeks, '23 08:00')).toMatchObject({
      allBlocked: true,
      useBy: { state: 'past' },
      verdict: { stage: 'date_mark', verdict: 'broken', section: '3-501.17(A)' },
      since: wall('23 00:00'),
    });
  });
  test('one deviation, also when it is moved to another cooler; thrown away it is closed', () => {
    const weeks = new Weeks().cooked(16, 'beans').step('24 09:00', 'beans', 'cold_hold', 'reachin');
    const found = weeks.book('24 12:00').deviations;
    expect(found).toMatchObject([{ stage: 'date_mark', foundAt: wall('23 00:00'), state: 'open' }]);
    weeks.step('24 13:00', 'beans', 'gone', null, { reason: 'discarded' });
    expect(weeks.book('24 14:00').deviations).toMatchObject([{ state: 'closed', untilAt: wall('24 13:00') }]);
  });
  describe('split past its day', () => {
    // 16 October is day 1, the 23rd is day 8: found at midnight, split into two at nine.
    const split = (more: { reheat_may_return?: boolean } = {}) =>
      new Weeks(more)
        .cooked(16, 'beans')
        .batch('23 09:00', 'left', 'plant', { from: ['beans'] })
        .step('23 09:00', 'left', 'cold_hold', 'walkin')
        .batch('23 09:00', 'right', 'plant', { from: ['beans'] })
        .step('23 09:00', 'right', 'cold_hold', 'reachin');
    const standing = (weeks: Weeks, at: string, id: string) =>
      weeks
        .book(at)
        .batches.get(id)
        ?.pieces.map((piece) => piece.standing);
    test('the pieces share what their parent opened, and are blocked by it', () => {
      const book = split().book('23 12:00');
      expect(book.deviations).toMatchObject([
        { stage: 'date_mark', batch: 'beans', foundAt: wall('23 00:00') },
      ]);
      expect(book.deviations[0]?.ends.map(({ batch }) => batch)).toEqual([null, 'left', 'right']);
      for (const id of ['left', 'right']) expect(standing(split(), '23 12:00', id)).toEqual(['do_not_serve']);
      // A split of a split belongs to it as well.
      const again = split().batch('23 10:00', 'half', 'plant', { from: ['left'] });
      again.step('23 10:00', 'half', 'cold_hold', 'walkin');
      expect(again.book('23 12:00').deviations).toHaveLength(1);
      expect(standing(again, '23 12:00', 'half')).toEqual(['do_not_serve']);
    });
    test('it closes only when each of them has its end', () => {
      const weeks = split()
        .step('23 13:00', 'left', 'gone', null, { reason: 'discarded' })
        .step('23 13:00', 'beans', 'gone', null, { reason: 'discarded' });
      expect(weeks.book('23 14:00').deviations).toMatchObject([{ state: 'open' }]);
      weeks.step('23 14:30', 'right', 'gone', null, { reason: 'discarded' });
      expect(weeks.book('23 15:00').deviations).toMatchObject([{ state: 'closed' }]);
    });
    test('what was split in time opens its own when its day is over', () => {
      const weeks = new Weeks()
        .cooked(16, 'beans')
        .batch('22 09:00', 'left', 'plant', { from: ['beans'] })
        .step('22 09:00', 'left', 'cold_hold', 'walkin')
        .step('22 10:00', 'beans', 'gone', null, { reason: 'sold' });
      expect(weeks.book('23 12:00').deviations.map(({ batch }) => batch)).toEqual(['left']);
    });
    test('no heat makes a split piece younger', () => {
      const weeks = split({ reheat_may_return: true }).step('24 09:00', 'left', 'reheat', 'oven');
      const read = (at: string, typed: string, held: number | null) =>
        weeks.add('reading', at, {
          batch: 'left',
          piece: null,
          equipment: null,
          spot: 'coldest',
          typed,
          value: Number(typed),
          unit: 'degF',
          probe: null,
          held_s: held,
          round: null,
          source: 'hand',
          correction: null,
          late_reason: null,
        });
      read('24 09:00', '38', null);
      read('24 10:00', '166', 20);
      weeks.step('24 10:05', 'left', 'hot_hold', 'oven');
      expect(standing(weeks, '24 11:00', 'left')).toEqual(['do_not_serve']);
    });
  });
  test('a reheat that is kept, in a house that lets food return by it, makes nothing younger', () => {
    const weeks = new Weeks({ reheat_may_return: true })
      .cooked(16, 'beans')
      .step('24 09:00', 'beans', 'reheat', 'oven');
    const read = (at: string, typed: string, held: number | null) =>
      weeks.add('reading', at, {
        batch: 'beans',
        piece: null,
        equipment: null,
        spot: 'coldest',
        typed,
        value: Number(typed),
        unit: 'degF',
        probe: null,
        held_s: held,
        round: null,
        source: 'hand',
        correction: null,
        late_reason: null,
      });
    read('24 09:00', '38', null);
    read('24 10:00', '166', 20);
    weeks.step('24 10:05', 'beans', 'hot_hold', 'oven');
    const batch = weeks.book('24 11:00').batches.get('beans');
    expect(batch?.runs.find(({ step }) => step === 'reheat')?.stages.temperature?.verdict).toBe('kept');
    expect(batch?.pieces.map(({ standing }) => standing)).toEqual(['do_not_serve']);
    expect(weeks.book('24 11:00').deviations.map(({ state }) => state)).toContain('open');
  });
  test('each pan has its own: the one that was frozen stands still, the other is past', () => {
    const pans = new Weeks()
      .batch('16 14:00', 'beans', 'plant', { pieces: 2 })
      .step('16 14:00', 'beans', 'cook', 'oven')
      .step('16 17:00', 'beans', 'cold_hold', 'walkin')
      .step('17 10:00', 'beans', 'cold_hold', 'freezer', {}, [2]);
    const runs =
      pans
        .book('23 12:00')
        .batches.get('beans')
        ?.runs.filter(({ end }) => end === null) ?? [];
    expect(runs.map((run) => [run.equipment, run.stages.date_mark?.verdict])).toEqual([
      ['walkin', 'broken'],
      ['freezer', 'kept'],
    ]);
  });
});

test('a local day begins and ends on the wall', () => {
  const days = new LocalDays(zone);
  expect(days.of(wall('16 23:59'))).toBe('2026-10-16');
  expect(days.of(wall('17 00:00'))).toBe('2026-10-17');
  expect(days.start('2026-10-17')).toBe(wall('17 00:00'));
});
