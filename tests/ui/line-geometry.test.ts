import { describe, expect, test } from 'vitest';
import type { Line, Stretch } from '#lib/fold/views.ts';
import { type LinePath, lineGeometry, type Part, ruleLinePaths, xOf } from '#lib/sheet/line-geometry.ts';

// An axis of 300 minutes on 300 px: one minute is one px, so that each expected number can be worked out by hand.
const minute = 60_000;
const start = Date.parse('2026-10-17T03:00:00Z');
const t = (minutes: number) => start + minutes * minute;
const stretch = (kind: Stretch['kind'], from: number, to: number, more: Partial<Stretch> = {}): Stretch => ({
  kind,
  from: t(from),
  to: t(to),
  ...more,
});
const look = (minutes: number, good = true, suspect = false): Line['looks'][number] => ({
  at: t(minutes),
  value: good ? 150 : 131,
  unit: 'degF',
  spot: 'edge',
  piece: 1,
  good,
  suspect,
});
const line = (more: Partial<Line>): Line => ({
  from: t(0),
  to: t(300),
  now: null,
  stretches: [],
  looks: [],
  dueAt: null,
  seenMin: 0,
  nobodyLookedMin: 0,
  underLongestMin: null,
  underShortestMin: null,
  ...more,
});
const box = { width: 300, h: 10, y: 9 }; // bar 9 to 19, fallen bar 19 to 29, middle 14
const of = (paths: LinePath[], part: Part) => paths.filter((path) => path.part === part);
const d = (drawn: Line, part: Part, b = box) => of(lineGeometry(drawn, b).paths, part).map((path) => path.d);

describe('the axis', () => {
  test('an instant lies where its share of the axis says, and outside of it at the nearer end', () => {
    expect([t(-5), t(0), t(75), t(300), t(400)].map((ms) => xOf(line({}), 200, ms))).toEqual([
      0, 0, 50, 200, 200,
    ]);
  });
  test('an axis without length puts everything at its start', () => {
    expect(xOf({ from: t(0), to: t(0) }, 200, t(0))).toBe(0);
  });
  test('the box holds a fallen bar: y + 2h + 4', () => {
    expect(lineGeometry(line({}), box).height).toBe(33);
    expect(lineGeometry(line({}), { width: 300, h: 20 }).height).toBe(53);
  });
});

describe('a bar between two looks', () => {
  test('by hand it is half as high as the line, in its middle', () => {
    expect(d(line({ stretches: [stretch('seen', 10, 110)] }), 'seen')).toEqual([
      'M10 11.5L110 11.5L110 16.5L10 16.5Z',
    ]);
  });
  test('by a logger at the coldest place it is full', () => {
    expect(d(line({ stretches: [stretch('seen', 10, 110, { witness: 'logger' })] }), 'seen')).toEqual([
      'M10 9L110 9L110 19L10 19Z',
    ]);
  });
});

describe('a stretch in which nobody looked', () => {
  const gap = line({ stretches: [stretch('seen', 0, 100), stretch('nobody_looked', 100, 200)] });
  test('is two edges of 2, from 3 after its neighbour, to its own end where the record ends', () => {
    expect(d(gap, 'nobody_looked')).toEqual(['M103 10H200M103 18H200']);
    expect(of(lineGeometry(gap, box).paths, 'nobody_looked')[0]?.stroke).toBe(2);
  });
  test('has edges of 3 from a bar of 14 on', () => {
    const wide = of(lineGeometry(gap, { width: 300, h: 14, y: 9 }).paths, 'nobody_looked')[0];
    expect([wide?.stroke, wide?.d]).toEqual([3, 'M103 10.5H200M103 21.5H200']);
  });
  test('stops 3 before the now line', () => {
    expect(d({ ...gap, now: t(200) }, 'nobody_looked')).toEqual(['M103 10H197M103 18H197']);
  });
  test('is left out when it would be shorter than 3 px', () => {
    const short = line({
      stretches: [stretch('seen', 0, 100), stretch('nobody_looked', 100, 108), stretch('seen', 108, 200)],
    });
    expect(d(short, 'nobody_looked')).toEqual([]); // 103 to 105
  });
});

describe('a stretch under the limit', () => {
  // The cut leans 0.5 px a px: at v it lies at xm + 0.5 × (14 − v).
  const fell = line({
    stretches: [stretch('seen', 0, 60), stretch('nobody_looked', 60, 100), stretch('under', 100, 150)],
    looks: [look(0), look(60), look(100, false)],
    to: t(300),
  });
  test('falls by one bar, from 3 right of its cut to its end', () => {
    // at 19: 100 − 2.5 + 3 = 100.5; at 29: 100 − 7.5 + 3 = 95.5
    expect(d(fell, 'under')).toEqual(['M100.5 19L150 19L150 29L95.5 29Z']);
  });
  test('is cut from 4 above the bar to 4 below the fallen one', () => {
    // at 5: 100 + 4.5; at 33: 100 − 9.5
    expect(d(fell, 'cut')).toEqual(['M104.5 5L90.5 33']);
  });
  test('slants the end of what lies before it, 3 px away', () => {
    // edges at 10 and 18: 100 + 2 − 3 = 99; 100 − 2 − 3 = 95
    expect(d(fell, 'nobody_looked')).toEqual(['M63 10H99M63 18H95']);
  });
  test('is cut again where a good look follows, and the bar goes on after the cut', () => {
    const back = line({ stretches: [...fell.stretches, stretch('seen', 150, 250)] });
    expect(d(back, 'cut')).toEqual(['M104.5 5L90.5 33M154.5 5L140.5 33']);
    // its end at 19: 150 − 2.5 − 3 = 144.5; at 29: 150 − 7.5 − 3 = 139.5
    expect(d(back, 'under')).toEqual(['M100.5 19L144.5 19L139.5 29L95.5 29Z']);
    // half bar 11.5 to 16.5: 150 + 1.25 + 3 = 154.25; 150 − 1.25 + 3 = 151.75
    expect(d(back, 'seen')[1]).toBe('M154.3 11.5L250 11.5L250 16.5L151.8 16.5Z');
  });
  test('is never drawn narrower than 14: it takes the room from before its cut', () => {
    const brief = line({ stretches: [stretch('nobody_looked', 0, 100), stretch('under', 100, 105)] });
    // xm = min(100, 105 − 14) = 91
    expect(d(brief, 'cut')).toEqual(['M95.5 5L81.5 33']);
    expect(d(brief, 'under')).toEqual(['M91.5 19L105 19L105 29L86.5 29Z']);
  });
  test('at the left edge it takes the room to its right, and the next stretch begins there', () => {
    const first = line({ stretches: [stretch('under', 0, 5), stretch('seen', 5, 100)] });
    expect(d(first, 'cut')).toEqual(['M4.5 5L-9.5 33M18.5 5L4.5 33']); // xm 0 and 14
    expect(d(first, 'seen')).toEqual(['M18.3 11.5L100 11.5L100 16.5L15.8 16.5Z']);
  });
});

describe('what is drawn over the line', () => {
  test('each look is a tick 6 high and 2 wide, one above the bar; one outside of the axis is left out', () => {
    expect(d(line({ looks: [look(0), look(90), look(301)] }), 'tick')).toEqual([
      'M-1 2H1V8H-1ZM89 2H91V8H89Z',
    ]);
  });
  test('ticks that touch or lie on one another are one block, whatever the order of the looks', () => {
    expect(d(line({ looks: [look(10), look(11), look(11), look(13), look(16)] }), 'tick')).toEqual([
      'M9 2H14V8H9ZM15 2H17V8H15Z',
    ]);
    expect(d(line({ looks: [look(13), look(11)] }), 'tick')).toEqual(['M12 2H14V8H12ZM10 2H12V8H10Z']);
  });
  test('a line without looks has no tick', () => {
    expect(d(line({}), 'tick')).toEqual([]);
  });
  test('the next look is a post from 6 above to 6 below with a flag of 7, in the ink of the tool', () => {
    const due = line({ dueAt: t(240) });
    expect(d(due, 'post')).toEqual(['M240 3V25M240 3h7']);
    expect(of(lineGeometry(due, box).paths, 'post')[0]?.ink).toBe('tool');
  });
  test('now is a line from 7 above to 2h + 2 below', () => {
    expect(d(line({ now: t(185) }), 'now')).toEqual(['M185 2V31']);
  });
  test('what is ahead is dots from 5 after now to 3 before the post', () => {
    const ahead = line({ now: t(185), dueAt: t(240), stretches: [stretch('ahead', 185, 240)] });
    const [dots] = of(lineGeometry(ahead, box).paths, 'ahead');
    expect([dots?.d, dots?.stroke, dots?.dash, dots?.ink]).toEqual(['M190 14H237', 3, '3 5', 'tool']);
  });
  test('a suspect reading is a wave of two halves around it, on paper rubbed clean', () => {
    const drawn = lineGeometry(line({ stretches: [stretch('suspect', 100, 100)] }), box);
    const [rubbed, wave] = of(drawn.paths, 'suspect');
    expect([rubbed?.ink, rubbed?.d]).toEqual(['paper', 'M84 8.5H116V19.5H84Z']); // 100 ± 13 ± 3
    expect(wave?.d).toBe('M87 14c4.3 -7.5 8.7 -7.5 13 0c4.3 7.5 8.7 7.5 13 0');
  });
  test('what is not sent yet is a dashed box 1 inside the bar', () => {
    const pencil = { ...line({}), stretches: [{ kind: 'not_sent' as const, from: t(50), to: t(100) }] };
    const [drawn] = of(lineGeometry(pencil, box).paths, 'not_sent');
    expect([drawn?.d, drawn?.dash]).toEqual(['M51 10H99V18H51Z', '5 4']);
  });
});

describe('odd records', () => {
  test('stretches in any order are drawn in order of time', () => {
    const mixed = line({ stretches: [stretch('under', 100, 150), stretch('nobody_looked', 0, 100)] });
    const kinds = lineGeometry(mixed, box).paths.map((path) => path.part);
    expect(kinds).toEqual(['nobody_looked', 'under', 'cut']);
  });
  test('a stretch that ended before the axis begins is not drawn', () => {
    expect(lineGeometry(line({ stretches: [stretch('seen', -90, -30)] }), box).paths).toEqual([]);
  });
});

test('the rule line of a chart is one thick and one thin line, 5 apart', () => {
  expect(ruleLinePaths(300, 40).map(({ d: path, stroke }) => [path, stroke])).toEqual([
    ['M0 40H300', 3],
    ['M0 45H300', 1.2],
  ]);
});
