import { conventions } from '#lib/limits/conventions.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { minutesBetween } from '#shared/time.ts';
import { profileOf, stagesOf } from './ask.ts';
import type { Book, JudgedRun, Look, Member } from './book.ts';
import { dueOf } from './due.ts';
import { answers, type Side, sideOf } from './good.ts';
import { worstIsWarm } from './pieces.ts';
import { planOf } from './plan-of.ts';
import type { Line, Stretch } from './views.ts';

export type LineOptions = {
  /** Only this piece's looks; missing = the whole group. */
  piece?: number | null;
  /** Axis; missing = from the start of the step to the end, or to now and the next due time. */
  from?: number;
  to?: number;
};

type Marked = { look: Look; side: Side };
type Kind = Stretch['kind'];
type Laid = { kind: Kind; from: number; to: number; witness?: 'hand' | 'logger' };

/** Above which another is laid: what is out of the limit hides nothing behind a seen stretch. */
const rank: Record<Kind, number> = { ahead: 0, seen: 1, nobody_looked: 2, suspect: 3, under: 4 };

/**
 * The interval within which two looks follow one another: the plan's "at most", else the longest time between two
 * of its checkpoints. Null: no plan says how often is enough, so no stretch between two looks is called seen.
 */
function intervalOf(book: Book, run: JudgedRun): number | null {
  if (run.planIntervalMin !== null) return run.planIntervalMin;
  const plan = planOf(book.kitchen, run.step, run.equipment);
  if (!plan) return null;
  const gaps = plan.checkpoints_min.flatMap((after, index, all) => {
    const next = all[index + 1];
    return next === undefined ? [] : [next - after];
  });
  return gaps.length > 0 ? Math.max(...gaps) : plan.every_min;
}

/** A logger at a place whose record can bridge two looks. */
export const byLogger = (look: Look): boolean =>
  look.source === 'logger' && (look.spot === 'coldest' || look.spot === 'edge' || look.spot === 'warmest');

/** Between two good looks that follow one another, and before the first and after the last. */
function betweenGood(good: readonly Look[], start: number, until: number, interval: number | null): Laid[] {
  const laid: Laid[] = [];
  const first = good[0];
  const last = good.at(-1);
  if (!first || !last) return [{ kind: 'nobody_looked', from: start, to: until }];
  laid.push({ kind: 'nobody_looked', from: start, to: first.at });
  for (const [index, look] of good.entries()) {
    const next = good[index + 1];
    if (!next) break;
    const [from, to] = [look.at, next.at];
    const apart = minutesBetween(from, to);
    if (interval === null || apart > interval) {
      laid.push({ kind: 'nobody_looked', from, to });
      continue;
    }
    const logged = byLogger(look) && byLogger(next) && apart <= conventions.logger_gap_min;
    laid.push({ kind: 'seen', from, to, witness: logged ? 'logger' : 'hand' });
  }
  laid.push({ kind: 'nobody_looked', from: last.at, to: until });
  return laid;
}

/** One piece's stretches out of the limit, each with the time since its last good look, in which nobody looked. */
function outOfLimit(marked: readonly Marked[], member: Member, until: number): Laid[] {
  const end = Math.min(member.until ?? until, until);
  const own = marked.filter(({ look }) => look.piece === member.piece);
  if (!own.some(({ side }) => side === 'bad')) return [];
  const laid: Laid[] = [];
  let covered = Number.NEGATIVE_INFINITY;
  own.forEach(({ look, side }, index) => {
    if (side !== 'bad') return;
    const good = (other: Marked): boolean => other.side === 'good' && answers(other.look, look);
    const before = own.slice(0, index).findLast(good)?.look.at ?? member.from;
    const after = own.slice(index + 1).find(good)?.look.at ?? end;
    if (look.at >= covered)
      laid.push({ kind: 'nobody_looked', from: Math.max(before, covered), to: look.at });
    laid.push({ kind: 'under', from: look.at, to: Math.max(after, look.at) });
    covered = Math.max(covered, after);
  });
  return laid;
}

/** Suspect readings that follow one another are one stretch. */
function suspectStretches(marked: readonly Marked[]): Laid[] {
  const laid: Laid[] = [];
  let open: Laid | null = null;
  for (const { look } of marked) {
    if (!look.suspect) open = null;
    else if (open) open.to = look.at;
    else {
      open = { kind: 'suspect', from: look.at, to: look.at };
      laid.push(open);
    }
  }
  return laid;
}

const ranks = Math.max(...Object.values(rank)) + 1;

/** Of what lies at each edge in turn, the places in `laid` by rank: a stretch is there from its start until its end. */
class Lying {
  readonly #at = Array.from({ length: ranks }, () => new Set<number>());
  readonly #laid: readonly Laid[];
  readonly #byStart: number[];
  readonly #byEnd: number[];
  #begun = 0;
  #ended = 0;

  constructor(laid: readonly Laid[]) {
    this.#laid = laid;
    const places = [...laid.keys()].filter((i) => this.#one(i).to > this.#one(i).from);
    this.#byStart = places.toSorted((i, j) => this.#one(i).from - this.#one(j).from);
    this.#byEnd = places.toSorted((i, j) => this.#one(i).to - this.#one(j).to);
  }

  #one(i: number): Laid {
    return this.#laid[i] ?? { kind: 'ahead', from: 0, to: 0 };
  }

  /** What covers the stretch from this edge to the next: the highest; of the same height the one laid first. */
  from(edge: number): Laid | null {
    for (let i = this.#byEnd[this.#ended]; i !== undefined && this.#one(i).to <= edge; ) {
      this.#at[rank[this.#one(i).kind]]?.delete(i);
      this.#ended += 1;
      i = this.#byEnd[this.#ended];
    }
    for (let i = this.#byStart[this.#begun]; i !== undefined && this.#one(i).from <= edge; ) {
      this.#at[rank[this.#one(i).kind]]?.add(i);
      this.#begun += 1;
      i = this.#byStart[this.#begun];
    }
    for (let height = ranks - 1; height >= 0; height -= 1) {
      const places = this.#at[height];
      if (places === undefined || places.size === 0) continue;
      let first = Number.POSITIVE_INFINITY;
      for (const place of places) if (place < first) first = place;
      return this.#one(first);
    }
    return null;
  }
}

/** None lies over another, and they are in order: nothing is out of the limit and nothing suspect. */
const isApart = (laid: readonly Laid[]): boolean =>
  laid.every(({ from }, i) => from >= (laid[i - 1]?.to ?? Number.NEGATIVE_INFINITY));

/** From each edge to the next what covers it, in order. */
function covered(laid: readonly Laid[]): Laid[] {
  const edges = Float64Array.from(laid.flatMap(({ from, to }) => [from, to])).sort();
  const lying = new Lying(laid);
  const found: Laid[] = [];
  edges.forEach((from, index) => {
    const to = edges[index + 1];
    if (to === undefined || to === from) return;
    const top = lying.from(from);
    if (top) found.push({ ...top, from, to });
  });
  return found;
}

/** Lays the stretches over one another; what lies beneath is cut, moments stay moments. */
function flatten(laid: readonly Laid[]): Stretch[] {
  const apart = isApart(laid);
  // Apart, each begins where it was laid: a sensor's thousand gaps need no set of their starts.
  const gaps = apart
    ? null
    : new Set(laid.flatMap((one) => (one.kind === 'nobody_looked' ? [one.from] : [])));
  const flat: Laid[] = [];
  for (const top of apart ? laid.filter(({ from, to }) => to > from) : covered(laid)) {
    const last = flat.at(-1);
    // Two gaps that a look parts stay two; what is seen or out of the limit goes on through a look.
    const goesOn =
      last &&
      last.to === top.from &&
      last.kind === top.kind &&
      last.witness === top.witness &&
      !(top.kind === 'nobody_looked' && (gaps === null || gaps.has(top.from)));
    if (goesOn) last.to = top.to;
    else flat.push(top);
  }
  const moments = laid.filter(
    ({ kind, from, to }) => from === to && kind !== 'seen' && kind !== 'nobody_looked',
  );
  return [...flat, ...moments].sort((a, b) => a.from - b.from || a.to - b.to);
}

function sum(stretches: readonly Stretch[], kind: Kind, until: number): number {
  let total = 0;
  for (const one of stretches)
    if (one.kind === kind) total += Math.max(0, minutesBetween(one.from, Math.min(one.to, until)));
  return total;
}

function membersOf(run: JudgedRun, piece: number | null | undefined): Member[] {
  if (piece !== undefined) return run.members.filter((member) => member.piece === piece);
  const first = run.members[0];
  const named = new Set(run.members.map((member) => member.piece));
  const others = [...new Set(run.looks.map((look) => look.piece))].filter((one) => !named.has(one));
  // Looks that name no piece of the group speak for the group as long as it stands.
  return [
    ...run.members,
    ...(first ? others.map((one) => ({ ...first, piece: one, from: run.start, until: run.end })) : []),
  ];
}

const marked = (looks: readonly Look[], run: JudgedRun, profile: Profile | null): Marked[] =>
  looks.map((look) => {
    const stages = stagesOf(run, look.piece);
    return { look, side: profile === null ? 'neither' : sideOf(look, run.step, stages, profile) };
  });

/** The proof line of a group, or of one of its pieces (docs/look.md 3.1): who looked when, and what was out of it. */
export function lineOf(book: Book, run: JudgedRun, options: LineOptions = {}): Line {
  const { piece } = options;
  const profile = profileOf(book);
  const members = membersOf(run, piece);
  const start =
    piece === undefined ? run.start : Math.min(...members.map(({ from }) => from), run.end ?? book.asOf);
  const left = members.every(({ until }) => until !== null);
  const end = left ? Math.max(...members.map(({ until }) => until ?? book.asOf), start) : null;
  const until = end ?? Math.max(book.asOf, start);
  const looks = run.looks.filter((look) => piece === undefined || look.piece === piece);
  const all = marked(looks, run, profile);
  const good = all.filter(({ side }) => side === 'good').map(({ look }) => look);
  const dueAt = end === null ? dueOf(book, run).dueAt : null;
  const laid = [
    ...betweenGood(good, start, until, intervalOf(book, run)),
    ...members.flatMap((member) => outOfLimit(all, member, until)),
    ...suspectStretches(all),
    ...(dueAt !== null && dueAt > until ? [{ kind: 'ahead' as const, from: until, to: dueAt }] : []),
  ];
  const stretches = flatten(laid);
  const counted = end ?? looks.at(-1)?.at ?? start;
  const held = (piece === undefined ? run.stages : run.byPiece.find((one) => one.piece === piece)?.stages)
    ?.at_readings;
  return {
    from: options.from ?? start,
    to: options.to ?? Math.max(until, dueAt ?? until),
    side: worstIsWarm(run.step) ? 'over' : 'under',
    now: end === null ? book.asOf : null,
    stretches,
    looks: all.map(({ look, side }) => ({
      at: look.at,
      value: look.value,
      unit: look.unit,
      spot: look.spot,
      piece: look.piece,
      good: side === 'good',
      suspect: look.suspect,
    })),
    dueAt,
    seenMin: sum(stretches, 'seen', counted),
    nobodyLookedMin: sum(stretches, 'nobody_looked', counted),
    underLongestMin: held?.below_longest_min ?? null,
    underShortestMin: held?.below_shortest_min ?? null,
  };
}
