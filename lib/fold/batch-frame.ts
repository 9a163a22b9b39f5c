import type { Verdict } from '#lib/judge/answer.ts';
import { roastCook } from '#lib/judge/roast.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { Body, EntryOf } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import type { JudgedRun, Kitchen, Look, Odd } from './book.ts';
import { type Conflict, conflictsOf, oddConflict } from './conflicts.ts';
import { type Bench, boundsOf, judgeRun } from './judge-run.ts';
import type { LocalDays } from './local-days.ts';
import { placeLooks } from './looks-of-runs.ts';
import { brought, type Marked, type MarkSources, markedOf } from './marked.ts';
import { foldSteps, type Steps } from './runs.ts';

/** A batch with its runs judged, before its deviations and standing are known. */
export type BatchFrame = {
  id: string;
  body: Body<'batch'>;
  at: number;
  seq: number;
  food: Body<'food'> | null;
  steps: Steps;
  looks: Look[];
  runs: JudgedRun[];
  bench: Bench;
  conflicts: Conflict[];
  odd: Odd[];
};

/** What the batches of one fold share. */
export type Shared = {
  kitchen: Kitchen;
  profile: Profile | null;
  air: ReadonlyMap<string, Look[]>;
  asOf: number;
  days: LocalDays;
  steps: ReadonlyMap<string, EntryOf<'step'>[]>;
  looks: ReadonlyMap<string, Look[]>;
  /** Whether an entry was corrected. */
  corrected: (id: string) => boolean;
};

type RoastCook = Verdict | 'none';

const order: readonly RoastCook[] = ['none', 'broken', 'not_shown', 'not_applicable', 'kept'];
const worse = (a: RoastCook, b: RoastCook): RoastCook => (order.indexOf(a) <= order.indexOf(b) ? a : b);

/** What a roast's cook (or its reheat by the roast's own route) showed of one piece. */
function shownBy(run: JudgedRun, piece: number | null): RoastCook {
  const own = run.byPiece.find((each) => each.piece === piece)?.stages;
  return roastCook(own ?? run.stages) ?? 'none';
}

/**
 * Folds the batches one after another; a batch that was made from others asks them first. A circle of sources
 * (which no honest record has) ends at the batch that is being asked already.
 */
export class BatchFrames {
  readonly frames = new Map<string, BatchFrame>();
  private readonly entries: ReadonlyMap<string, EntryOf<'batch'>[]>;
  private readonly shared: Shared;
  private readonly asked = new Set<string>();

  constructor(entries: readonly EntryOf<'batch'>[], shared: Shared) {
    this.entries = Map.groupBy(entries, ({ body }) => body.batch);
    this.shared = shared;
    for (const id of this.entries.keys()) this.frame(id);
  }

  private frame(id: string): BatchFrame | null {
    const done = this.frames.get(id);
    if (done) return done;
    const entries = this.entries.get(id);
    const first = entries?.[0];
    const body = entries?.at(-1)?.body;
    if (!first || !body || this.asked.has(id)) return null;
    this.asked.add(id);
    const frame = this.fold(first, body);
    this.frames.set(id, frame);
    return frame;
  }

  private fold(first: EntryOf<'batch'>, body: Body<'batch'>): BatchFrame {
    const { kitchen, profile, air, asOf } = this.shared;
    const food = kitchen.foods.get(body.food) ?? null;
    const written = this.shared.steps.get(body.batch) ?? [];
    const steps = foldSteps(body.pieces, written);
    const conflicts = conflictsOf(written, this.shared.corrected);
    const looks = this.shared.looks.get(body.batch) ?? [];
    const placed = placeLooks(steps.runs, looks, body.pieces !== null);
    const judged: JudgedRun[] = [];
    const inherited = this.inherited(body, msOf(first.at));
    const marking = {
      kitchen,
      food,
      made: body.made,
      ...this.marking(body, msOf(first.at)),
      days: this.shared.days,
    };
    const bench: Bench = {
      days: this.shared.days,
      markedOf: (piece, from, at) => markedOf(piece, from, at, bench.runs, marking),
      kitchen,
      profile,
      air,
      asOf,
      made: body.made,
      food,
      inherited,
      runs: [],
      roastCook: (piece, at) => roastCookOf(food, body, inherited, judged, piece, at),
    };
    const runs = placed.runs.map((shape) => boundsOf(shape, bench)).sort((a, b) => a.start - b.start);
    bench.runs = runs;
    // A hold asks what its cook showed, so the runs are judged in the order of the night.
    for (const run of runs) judged.push(judgeRun(run, bench));
    return {
      id: body.batch,
      body,
      at: msOf(first.at),
      seq: first.seq,
      food,
      steps,
      looks,
      runs: judged,
      bench,
      conflicts,
      odd: [...steps.odd, ...placed.odd, ...conflicts.map((conflict) => oddConflict(conflict, kitchen))],
    };
  }

  /** What the sources bring along for the date mark of what was made of them. */
  private marking(body: Body<'batch'>, at: number): Pick<MarkSources, 'madeOf' | 'madeOfUnknown'> {
    const { days } = this.shared;
    const known = body.source.map((source) => {
      const from = source.batch === null || source.batch === body.batch ? null : this.frame(source.batch);
      return from === null
        ? null
        : (source.pieces ?? from.steps.pieces).map((piece) =>
            brought(from.bench.markedOf(piece, at, at), at, days),
          );
    });
    return {
      madeOf: alike(known.flatMap((marks) => marks ?? [])),
      madeOfUnknown: known.includes(null),
    };
  }

  /** What the sources' cook showed when this batch was made of them: the worst of them. */
  private inherited(body: Body<'batch'>, at: number): RoastCook {
    if (body.made === 'cut' || body.made === 'new') return 'none';
    const shown = body.source.flatMap((source) => {
      const from = source.batch === null ? null : this.frame(source.batch);
      if (!from) return ['none' as const];
      return (source.pieces ?? from.steps.pieces).map((piece) => from.bench.roastCook(piece, at) ?? 'none');
    });
    return shown.length === 0 ? 'none' : shown.reduce(worse);
  }
}

/** Pieces of one past are one source: six pieces of one batch are not six dates. */
const alike = (marks: readonly Marked[]): Marked[] => [
  ...new Map(marks.map((marked) => [JSON.stringify(marked), marked])).values(),
];

function roastCookOf(
  food: Body<'food'> | null,
  body: Body<'batch'>,
  inherited: RoastCook,
  judged: readonly JudgedRun[],
  piece: number | null,
  at: number,
): RoastCook | undefined {
  if (food?.class !== 'intact_roast') return undefined;
  if (body.made === 'cut') return 'none';
  const past = judged.filter((run) =>
    run.members.some((member) => member.piece === piece && member.from < at),
  );
  if (past.some(({ step }) => step === 'cutting')) return 'none';
  const cooked = past.findLast(
    ({ step, details }) => step === 'cook' || (step === 'reheat' && details.route === 'roast'),
  );
  return cooked ? shownBy(cooked, piece) : inherited;
}
