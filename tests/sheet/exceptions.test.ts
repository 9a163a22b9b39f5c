import { describe, expect, test } from 'vitest';
import { exceptionWords } from '#lib/sheet/exception-words.ts';
import { type Exception, exceptionsOf, openItems, refsOf } from '#lib/sheet/exceptions.ts';
import { SheetNames } from '#lib/sheet/sheet-names.ts';
import { sheetWords } from '#lib/sheet/sheet-words.ts';
import { idOf } from '../fold/demo-book.ts';
import { dayOfDemo, friday, saturdayDay } from './demo-day.ts';

const pieceOf = (one: Exception | undefined) =>
  one && 'pieces' in one ? [one.batch?.name, one.pieces] : undefined;

describe('the exceptions of the demo night', () => {
  const found = exceptionsOf(dayOfDemo(friday));
  const names = new SheetNames(dayOfDemo(friday), sheetWords('en'), 'en');

  test('Friday tells of A7 and of the second pan as broken, each with its section', () => {
    const broken = found.filter((one) => one.kind === 'broken');
    expect(broken.map((one) => [...(pieceOf(one) ?? []), one.judged.section]).sort()).toEqual([
      ['BN-A', [2], '3-501.14(A)(1)'],
      ['BR-A', [7], '3-501.16(A)(1)'],
    ]);
  });

  test('Friday tells of B2, which a cook opened by hand', () => {
    const byHand = found.filter((one) => one.kind === 'deviation');
    expect(byHand.map(pieceOf)).toContainEqual(['BR-B', [2]]);
  });

  test('Friday tells of the round of 01:00 with the gaps that it left (demand:9)', () => {
    const missed = found.find((one) => one.kind === 'round_missed');
    expect(missed?.kind === 'round_missed' && missed.round.planned_at).toBe('2026-10-17T01:00:00-05:00');
    const gaps = missed?.kind === 'round_missed' ? missed.gaps : [];
    // The walk-in is to be looked at within 4 h 30 min: BC-1 was seen at 21:01 and not again before 03:40.
    expect(gaps.map((gap) => gap.batch.name).sort()).toEqual(['BC-1', 'BR-A', 'BR-A', 'TB-A']);
  });

  test('Friday tells of the blue thermometer', () => {
    const blue = found.find((one) => one.kind === 'thermometer');
    expect(blue?.kind === 'thermometer' && blue.thermometer.id).toBe(idOf('blue'));
  });

  test('their tags count from 1, and what was found worst stands before what nobody saw', () => {
    expect(found.map((one) => one.tag)).toEqual(found.map((_, i) => i + 1));
    const kinds = found.map((one) => one.kind);
    expect(kinds.lastIndexOf('broken')).toBeLessThan(kinds.indexOf('round_missed'));
  });

  test('the words of A7 give figure, time, spot, thermometer, limit and last good look', () => {
    const a7 = found.find((one) => one.kind === 'broken' && one.batch.name === 'BR-A');
    if (!a7) throw new Error('A7 is not told of');
    const { lines, head } = exceptionWords(names, a7);
    expect(head).toBe('BR-A, Brisket, whole, not injected, piece 7: hot hold, Cabinet 2.');
    expect(lines[0]).toContain('Read 127.8 °F at 03:12: thin end, thermometer red, WO.');
    expect(lines[0]).toContain('Last good look 23:05 at 152.9 °F.');
    expect(lines.join(' ')).toContain('piece 7: thrown away');
    expect(lines.join(' ')).toContain('8.4 lb');
  });

  test('the manager is asked about each thing that is open, by a reference that the demo signature used', () => {
    const refs = new Set(openItems(dayOfDemo(friday)).flatMap(refsOf));
    for (const used of ['e0258', 'e0220', 'e0307', 'e0308']) expect(refs).toContain(idOf(used));
  });

  test('Saturday tells of the power cut and carries what Friday left, at the end (demand:66)', () => {
    const saturday = exceptionsOf(dayOfDemo(saturdayDay));
    expect(saturday.some((one) => one.kind === 'power_cut')).toBe(true);
    const day = dayOfDemo(saturdayDay);
    const carried = saturday.map(
      (one) =>
        one.deviations.length > 0 &&
        one.deviations.every((each) => Date.parse(each.found_at) < Date.parse(day.from)),
    );
    expect(carried).toContain(true);
    expect(carried).toEqual([...carried].sort((a, b) => Number(a) - Number(b)));
  });
});
