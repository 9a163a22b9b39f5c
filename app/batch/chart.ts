import type { Line } from '#lib/fold/views.ts';
import { xOf } from '#lib/sheet/line-geometry.ts';

type ShownLook = Line['looks'][number];

export type ChartBox = { width: number; top: number; height: number };

export type ChartPoint = { x: number; y: number; look: ShownLook };
export type ChartLabel = ChartPoint & { cut: boolean };
export type Chart = {
  /** Every look, as a cross. */
  points: ChartPoint[];
  /** Plain links between neighbouring looks at one place of the drawn piece, only where the stretch was seen. */
  links: { x1: number; y1: number; x2: number; y2: number }[];
  /** From the drawn piece's looks down to the line below. */
  drops: ChartPoint[];
  /** Figures that are lettered: the drawn piece's first, last before a gap and newest; of any piece those out of the limit. */
  labels: ChartLabel[];
  /** y of each limit, in the order given. */
  limits: number[];
  /** Stretches in which nobody looked, wide enough to be named. */
  gaps: { x: number; width: number; from: number; to: number }[];
};

const padDegrees = 4; // room above the highest and below the lowest figure, in degrees of the chart
const labelPx = { width: 44, height: 18 }; // of a figure with one decimal and its sign, lettered
const namedGapPx = 96; // narrower gaps are left to the line and the table

/**
 * Readings against the limit on the time axis of the proof line. Nothing crosses a stretch in which nobody
 * looked: only looks of one piece and spot that lie in the same seen stretch are joined.
 *
 * @param limits figures of the rule in the looks' unit; they are always inside the picture
 * @param drawn the piece whose looks are linked and lettered
 */
export function chart(
  line: Pick<Line, 'from' | 'to' | 'looks' | 'stretches'>,
  limits: readonly number[],
  drawn: number | null,
  box: ChartBox,
): Chart {
  const values = [...line.looks.map((look) => look.value), ...limits];
  const most = Math.max(...values) + padDegrees;
  const least = Math.min(...values) - padDegrees;
  const y = (value: number) => box.top + ((most - value) / Math.max(1, most - least)) * box.height;
  const x = (at: number) => xOf(line, box.width, at);
  const point = (look: ShownLook): ChartPoint => ({ x: x(look.at), y: y(look.value), look });
  const series = ofPiece(line.looks, drawn);
  const own = series.flat().sort((a, b) => a.at - b.at);
  return {
    points: line.looks.map(point),
    links: series.flatMap((looks) => links(looks, line.stretches).map(([a, b]) => link(point(a), point(b)))),
    drops: own.map(point),
    labels: apart(
      lettered(lowestPerMoment(own), line.looks, line.stretches).map((look) => ({
        ...point(look),
        cut: isOut(look, line.stretches),
      })),
    ),
    limits: limits.map(y),
    gaps: line.stretches
      .filter((stretch) => stretch.kind === 'nobody_looked')
      .map(({ from, to }) => ({ x: x(from), width: x(to) - x(from), from, to }))
      .filter((gap) => gap.width >= namedGapPx),
  };
}

/**
 * The figures that can be read beside one another, the newer before the older. One out of the limit is lettered below
 * its point, where it is in no other's way, and always stands. What is left out here stands among the readings below.
 */
function apart(labels: readonly ChartLabel[]): ChartLabel[] {
  const kept: ChartLabel[] = [];
  const isFree = ({ x, y }: ChartLabel): boolean =>
    !kept.some(
      (other) =>
        !other.cut && Math.abs(other.x - x) < labelPx.width && Math.abs(other.y - y) < labelPx.height,
    );
  for (const label of labels.toReversed()) if (label.cut || isFree(label)) kept.push(label);
  return kept.toReversed();
}

/** The drawn piece's looks, one list a spot, in order of time. */
function ofPiece(looks: readonly ShownLook[], drawn: number | null): ShownLook[][] {
  const own = looks.filter((look) => look.piece === drawn).sort((a, b) => a.at - b.at);
  return [...Map.groupBy(own, (look) => look.spot).values()];
}

function links(looks: readonly ShownLook[], stretches: Line['stretches']): [ShownLook, ShownLook][] {
  return looks.slice(1).flatMap((look, i): [ShownLook, ShownLook][] => {
    const before = looks[i];
    return before !== undefined && sameSeen(before, look, stretches) ? [[before, look]] : [];
  });
}

/** Whether everything from the one look to the other was looked at in time: seen stretches that follow one another. */
function sameSeen(a: ShownLook, b: ShownLook, stretches: Line['stretches']): boolean {
  if (!a.good || !b.good) return false;
  const between = stretches.filter(({ from, to }) => to > a.at && from < b.at);
  return between.length > 0 && between.every(({ kind }) => kind === 'seen' || kind === 'suspect');
}

const link = (a: ChartPoint, b: ChartPoint) => ({ x1: a.x, y1: a.y, x2: b.x, y2: b.y });

function lowestPerMoment(looks: readonly ShownLook[]): ShownLook[] {
  const byMoment = Map.groupBy(looks, (look) => look.at);
  return [...byMoment.values()].flatMap((same) => {
    const [first, ...rest] = same;
    return first === undefined
      ? []
      : [rest.reduce((low, look) => (look.value < low.value ? look : low), first)];
  });
}

function lettered(
  own: readonly ShownLook[],
  all: readonly ShownLook[],
  stretches: Line['stretches'],
): ShownLook[] {
  const gaps = stretches.filter((stretch) => stretch.kind === 'nobody_looked');
  const out = lowestPerMoment(all.filter((look) => isOut(look, stretches)));
  const named = own.filter(
    (look, i) => i === 0 || i === own.length - 1 || gaps.some((gap) => gap.from === look.at),
  );
  return [...named.filter((look) => !out.some((bad) => bad.at === look.at)), ...out].sort(
    (a, b) => a.at - b.at,
  );
}

/** Out of the limit: the line is under (or over) there. A figure that proves nothing is not out of it. */
const isOut = (look: ShownLook, stretches: Line['stretches']): boolean =>
  !look.good && stretches.some(({ kind, from, to }) => kind === 'under' && from <= look.at && look.at <= to);
