import type { Line, Stretch } from '#lib/fold/views.ts';

/**
 * The proof line as paths (docs/look.md 3.2): the same on the screen and on the printed sheet. Pure geometry in px
 * of the drawing; who draws it maps `ink` to its own colours. A hand look proves its own moment, so the bar
 * between two of them is drawn at half height; full height is what a logger witnessed.
 */
export type Ink = 'ink' | 'tool' | 'limit' | 'paper';

export type Part =
  | 'seen'
  | 'nobody_looked'
  | 'under'
  | 'cut'
  | 'ahead'
  | 'suspect'
  | 'not_sent'
  | 'tick'
  | 'post'
  | 'now'
  | 'rule';

/** A filled outline (`stroke` null) or a line `stroke` px wide, dashed as in SVG. */
export type LinePath = { part: Part; d: string; ink: Ink; stroke: number | null; dash: string | null };

export type LineGeometry = { width: number; height: number; paths: LinePath[] };

/** A stretch, or one that rests on readings still on this phone. */
export type DrawnStretch = Omit<Stretch, 'kind'> & { kind: Stretch['kind'] | 'not_sent' };
export type DrawnLine = Omit<Line, 'stretches'> & { stretches: readonly DrawnStretch[] };

/** `width` of the axis, height `h` of the bar, `y` its top: at least 9, so that ticks and the now line fit. */
export type LineBox = { width: number; h: number; y?: number };

const defaultTop = 9;
const gap = 3; // between a stretch and its neighbour
const leastUnder = 14; // least drawn width of an under stretch; times in words stay exact
const leastSuspect = 26; // two half waves
const tickWidth = 2;

const fixed = (n: number): string => String(Math.round(n * 10) / 10);
const at = (x: number, y: number): string => `${fixed(x)} ${fixed(y)}`;

/** Where the instant `t` lies on an axis `width` px wide; outside of it, at its nearer end. */
export function xOf(line: { from: number; to: number }, width: number, t: number): number {
  if (line.to <= line.from) return 0;
  return Math.min(width, Math.max(0, ((t - line.from) / (line.to - line.from)) * width));
}

/** One end of a stretch: straight at x, or along a cut whose middle lies at x. `shift` keeps the neighbours apart. */
type End = { x: number; cut: boolean; shift: number };

type Bar = { y: number; h: number };

/** x of an end at height v: a cut leans by half of its height. */
const endAt = (end: End, bar: Bar, v: number): number =>
  end.x + end.shift + (end.cut ? 0.5 * (bar.y + bar.h / 2 - v) : 0);

const outline = (a: End, b: End, bar: Bar, top: number, bottom: number): string =>
  `M${at(endAt(a, bar, top), top)}L${at(endAt(b, bar, top), top)}L${at(endAt(b, bar, bottom), bottom)}L${at(endAt(a, bar, bottom), bottom)}Z`;

const filled = (part: Part, d: string): LinePath => ({ part, d, ink: 'ink', stroke: null, dash: null });
const stroked = (part: Part, d: string, stroke: number, ink: Ink = 'ink', dash: string | null = null) =>
  ({ part, d, ink, stroke, dash }) satisfies LinePath;

type Placed = { stretch: DrawnStretch; a: number; b: number };

/** Ends of all stretches in px. An under stretch is at least 14 wide: it takes the room from what is before it. */
function placed(line: DrawnLine, width: number): Placed[] {
  const inOrder = [...line.stretches]
    .filter((s) => s.to >= line.from && s.from <= line.to)
    .sort((s, t) => s.from - t.from || s.to - t.to);
  const all = inOrder.map((stretch) => ({
    stretch,
    a: xOf(line, width, stretch.from),
    b: xOf(line, width, stretch.to),
  }));
  for (const [i, one] of all.entries()) {
    if (one.stretch.kind !== 'under') continue;
    one.a = Math.max(0, Math.min(one.a, one.b - leastUnder));
    one.b = Math.max(one.b, one.a + leastUnder);
    const before = all[i - 1];
    const after = all[i + 1];
    if (before) before.b = one.a;
    if (after) after.a = Math.max(after.a, one.b);
  }
  return all;
}

const bars: ReadonlySet<string> = new Set(['seen', 'nobody_looked', 'under', 'not_sent']);

/** How a stretch begins and ends: along a cut where the neighbour (or it itself) is under, else straight. */
function ends(all: readonly Placed[], i: number, nowX: number | null): { a: End; b: End } | null {
  const one = all[i];
  if (!one) return null;
  const before = all[i - 1];
  const after = all[i + 1];
  const under = one.stretch.kind === 'under';
  const cutBefore = under || before?.stretch.kind === 'under';
  const cutAfter = under ? after?.stretch.kind === 'seen' : after?.stretch.kind === 'under';
  const apart = one.stretch.kind === 'nobody_looked' || one.stretch.kind === 'not_sent';
  const shiftA = cutBefore || (apart && before && bars.has(before.stretch.kind)) ? gap : 0;
  const atNow = nowX !== null && Math.abs(one.b - nowX) < 0.5;
  const shiftB = cutAfter || (apart && (after ? bars.has(after.stretch.kind) || atNow : atNow)) ? -gap : 0;
  return {
    a: { x: one.a, cut: cutBefore, shift: shiftA },
    b: { x: one.b, cut: cutAfter, shift: shiftB },
  };
}

function seen(one: DrawnStretch, a: End, b: End, bar: Bar): LinePath[] {
  const half = one.witness === 'logger' ? 0 : bar.h / 4;
  const top = bar.y + half;
  const bottom = bar.y + bar.h - half;
  if (endAt(b, bar, top) - endAt(a, bar, top) < 0) return [];
  return [filled('seen', outline(a, b, bar, top, bottom))];
}

function nobodyLooked(a: End, b: End, bar: Bar): LinePath[] {
  const e = bar.h >= 14 ? 3 : 2;
  const edges = [bar.y + e / 2, bar.y + bar.h - e / 2]
    .map((v) => ({ v, from: endAt(a, bar, v), to: endAt(b, bar, v) }))
    .filter(({ from, to }) => to - from >= gap); // shorter than 3 px is left out
  if (edges.length === 0) return [];
  const d = edges.map(({ v, from, to }) => `M${at(from, v)}H${fixed(to)}`).join('');
  return [stroked('nobody_looked', d, e)];
}

function under(a: End, b: End, bar: Bar): LinePath[] {
  const top = bar.y - 4;
  const bottom = bar.y + 2 * bar.h + 4;
  const cut = (end: End) => {
    const plain = { ...end, shift: 0 };
    return `M${at(endAt(plain, bar, top), top)}L${at(endAt(plain, bar, bottom), bottom)}`;
  };
  return [
    filled('under', outline(a, b, bar, bar.y + bar.h, bar.y + 2 * bar.h)),
    stroked('cut', cut(a) + (b.cut ? cut(b) : ''), 2),
  ];
}

function notSent(a: End, b: End, bar: Bar): LinePath[] {
  const [from, to] = [endAt(a, bar, bar.y) + 1, endAt(b, bar, bar.y) - 1];
  if (to - from < gap) return [];
  const d = `M${at(from, bar.y + 1)}H${fixed(to)}V${fixed(bar.y + bar.h - 1)}H${fixed(from)}Z`;
  return [stroked('not_sent', d, 2, 'ink', '5 4')];
}

/** A wave in place of the bar, at least 26 wide around its reading; what lies below it is wiped out first. */
function suspect(one: Placed, bar: Bar, width: number): LinePath[] {
  const need = Math.max(leastSuspect, one.b - one.a);
  const middle = (one.a + one.b) / 2;
  const from = Math.max(0, Math.min(width - need, middle - need / 2));
  const halves = Math.max(2, Math.round(need / 13));
  const step = need / halves;
  const lift = bar.h * 0.75;
  const waves = Array.from({ length: halves }, (_, i) => {
    const c = i % 2 === 0 ? -lift : lift;
    return `c${at(step / 3, c)} ${at((step * 2) / 3, c)} ${at(step, 0)}`;
  }).join('');
  const rubbed = `M${at(from - gap, bar.y - 0.5)}H${fixed(from + need + gap)}V${fixed(bar.y + bar.h + 0.5)}H${fixed(from - gap)}Z`;
  return [
    { part: 'suspect', d: rubbed, ink: 'paper', stroke: null, dash: null },
    stroked('suspect', `M${at(from, bar.y + bar.h / 2)}${waves}`, 2.5),
  ];
}

function stretchPaths(all: readonly Placed[], i: number, nowX: number | null, bar: Bar): LinePath[] {
  const one = all[i];
  // A cut leans by a quarter of the height at either end: where even that leaves no room there is nothing to draw.
  if (one?.stretch.kind === 'nobody_looked' && one.b - one.a + bar.h / 2 < gap) return [];
  const both = ends(all, i, nowX);
  if (!one || !both) return [];
  const { a, b } = both;
  switch (one.stretch.kind) {
    case 'seen':
      return seen(one.stretch, a, b, bar);
    case 'nobody_looked':
      return nobodyLooked(a, b, bar);
    case 'under':
      return under(a, b, bar);
    case 'not_sent':
      return notSent(a, b, bar);
    case 'ahead': {
      const [from, to] = [one.a + 5, one.b - gap];
      if (to - from < gap) return [];
      const y = bar.y + bar.h / 2;
      return [stroked('ahead', `M${at(from, y)}H${fixed(to)}`, 3, 'tool', '3 5')];
    }
    case 'suspect':
      return [];
  }
}

/** Looks outside of the axis have no tick; ticks that touch are one block, as a sensor's do. */
function tickBlocks(line: DrawnLine, width: number): { from: number; to: number }[] {
  const blocks: { from: number; to: number }[] = [];
  for (const { at: t } of line.looks) {
    if (t < line.from || t > line.to) continue;
    const x = xOf(line, width, t);
    const [from, to] = [x - tickWidth / 2, x + tickWidth / 2];
    const last = blocks.at(-1);
    if (last !== undefined && from >= last.from && from <= last.to) last.to = Math.max(last.to, to);
    else blocks.push({ from, to });
  }
  return blocks;
}

function ticks(line: DrawnLine, width: number, bar: Bar): LinePath[] {
  const [top, foot] = [fixed(bar.y - 7), fixed(bar.y - 1)];
  const block = ({ from, to }: { from: number; to: number }): string =>
    `M${fixed(from)} ${top}H${fixed(to)}V${foot}H${fixed(from)}Z`;
  const d = tickBlocks(line, width).map(block).join('');
  return d === '' ? [] : [filled('tick', d)];
}

/**
 * All paths of one proof line in the order in which they are drawn. The height holds a fallen bar and the now
 * line: y + 2h + 4.
 */
export function lineGeometry(line: DrawnLine, box: LineBox): LineGeometry {
  const bar = { y: box.y ?? defaultTop, h: box.h };
  const inside = (t: number) => t >= line.from && t <= line.to;
  const x = (t: number) => xOf(line, box.width, t);
  const nowX = line.now !== null && inside(line.now) ? x(line.now) : null;
  const whole = placed(line, box.width);
  const lying = whole.filter(({ stretch }) => stretch.kind !== 'suspect');

  const paths: LinePath[] = [];
  for (const i of lying.keys()) paths.push(...stretchPaths(lying, i, nowX, bar));
  for (const one of whole) if (one.stretch.kind === 'suspect') paths.push(...suspect(one, bar, box.width));
  paths.push(...ticks(line, box.width, bar));
  if (line.dueAt !== null && inside(line.dueAt)) {
    const [px, top] = [x(line.dueAt), bar.y - 6];
    paths.push(stroked('post', `M${at(px, top)}V${fixed(bar.y + bar.h + 6)}M${at(px, top)}h7`, 2.5, 'tool'));
  }
  if (nowX !== null)
    paths.push(stroked('now', `M${at(nowX, bar.y - 7)}V${fixed(bar.y + 2 * bar.h + 2)}`, 2, 'limit'));
  return { width: box.width, height: bar.y + 2 * bar.h + 4, paths };
}

/** The rule line of a chart at height y: a thick and a thin line, 5 apart. */
export const ruleLinePaths = (width: number, y: number): LinePath[] => [
  stroked('rule', `M${at(0, y)}H${fixed(width)}`, 3, 'limit'),
  stroked('rule', `M${at(0, y + 5)}H${fixed(width)}`, 1.2, 'limit'),
];
