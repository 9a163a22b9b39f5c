import type { Look, Member, Odd } from './book.ts';
import { isFood } from './looks.ts';
import type { RunShape } from './runs.ts';

export type ShapeWithLooks = RunShape & { looks: Look[]; before: Look[] };

type Stay = { run: ShapeWithLooks; member: Member };

/** Where a piece was, in order of time. */
function staysOf(runs: readonly ShapeWithLooks[]): Map<number | null, Stay[]> {
  const stays = runs.flatMap((run) => run.members.map((member) => ({ run, member })));
  stays.sort((a, b) => a.member.from - b.member.from);
  return Map.groupBy(stays, ({ member }) => member.piece);
}

const wasAt = (run: RunShape, equipment: string | null): boolean =>
  equipment !== null && run.places.some((place) => place.equipment === equipment);

/**
 * The stay in which a look was made. A look at the very moment of a step belongs to the step that begins, unless
 * it names the place that the piece comes from; a look at the moment of leaving for good belongs to the stay.
 */
function stayAt(stays: readonly Stay[], look: Look): Stay | undefined {
  const index = stays.findLastIndex(({ member }) => member.from <= look.at);
  const stay = stays[index];
  if (!stay || (stay.member.until !== null && look.at > stay.member.until)) return undefined;
  const former = stays[index - 1];
  const tied = former !== undefined && stay.member.from === look.at && former.member.until === look.at;
  if (tied && wasAt(former.run, look.equipment) && !wasAt(stay.run, look.equipment)) return former;
  return stay;
}

const goesOnAt =
  (at: number) =>
  ({ member }: Stay): boolean =>
    member.from <= at && (member.until === null || at <= member.until);

/** A look that names no piece speaks for the group in its place; where no place is named, for each that goes on. */
function groupsAt(all: readonly Stay[], look: Look): ShapeWithLooks[] {
  const runs = [...new Set(all.filter(goesOnAt(look.at)).map(({ run }) => run))];
  const here = runs.filter((run) => wasAt(run, look.equipment));
  return here.length > 0 ? here : runs;
}

/** All looks of the last moment before `from`. */
function lastBefore(looks: readonly Look[], from: number): Look[] {
  const last = looks.findLast(({ at }) => at < from);
  return last ? looks.filter(({ at }) => at === last.at) : [];
}

const oddLook = (look: Look, key: string): Odd => ({
  entry: look.id,
  at: look.at,
  key,
  values: { piece: look.piece ?? '–', value: look.typed },
});

const isOver =
  (at: number) =>
  ({ member }: Stay): boolean =>
    member.until !== null && member.until < at;

/** Puts a look into its run or runs; returns what is odd about it, as a message key, or null. */
function placeLook(look: Look, stays: Map<number | null, Stay[]>, counted: boolean): string | null {
  const own = stays.get(look.piece) ?? [];
  const stay = stayAt(own, look);
  if (stay) {
    stay.run.looks.push(look);
    return null;
  }
  if (own.length > 0 && look.piece !== null) return own.every(isOver(look.at)) ? 'reading_after_gone' : null;
  const all = [...stays.values()].flat();
  const groups = groupsAt(all, look);
  for (const run of groups) run.looks.push(look);
  if (look.piece !== null && counted) return 'reading_of_missing_piece';
  return groups.length === 0 && all.length > 0 && all.every(isOver(look.at)) ? 'reading_after_gone' : null;
}

/**
 * Gives each food look of a batch (in order of time) to the run in which it was made, by piece and time, and each
 * run the last food looks of its pieces before they came. Looks before the first step belong to no run; looks
 * after a piece was gone neither, and are said.
 */
export function placeLooks(
  shapes: readonly RunShape[],
  looks: readonly Look[],
  counted: boolean,
): { runs: ShapeWithLooks[]; odd: Odd[] } {
  const runs = shapes.map((shape) => ({ ...shape, looks: [] as Look[], before: [] as Look[] }));
  const stays = staysOf(runs);
  const food = looks.filter(isFood);
  const odd = food.flatMap((look) => {
    const key = placeLook(look, stays, counted);
    return key === null ? [] : [oddLook(look, key)];
  });
  const ofPiece = Map.groupBy(food, ({ piece }) => piece);
  for (const run of runs) {
    for (const { piece, from } of run.members) {
      const own = lastBefore(ofPiece.get(piece) ?? [], from);
      // Pans that came out of a kettle were last read in it.
      run.before.push(...(own.length > 0 || counted ? own : lastBefore(ofPiece.get(null) ?? [], from)));
    }
    run.before = [...new Set(run.before)];
    run.before.sort((a, b) => a.at - b.at || a.seq - b.seq);
  }
  return { runs, odd };
}
