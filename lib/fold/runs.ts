import type { EntryOf } from '#shared/entries/entry.ts';
import type { Member, Odd, Piece, Run } from './book.ts';
import { whenOf } from './order.ts';

/** A run while it is being made: who is in it and where, without its looks. */
export type RunShape = Pick<Run, 'key' | 'batch' | 'step' | 'equipment' | 'places' | 'details'> & {
  members: Member[];
};

type Number_ = number | null;

/** What the steps of a batch say: its runs, what became of its pieces, and what did not fit. */
export type Steps = {
  runs: RunShape[];
  /** Every piece that the batch has or was ever given; a kettle that was parted into pans is no longer listed. */
  pieces: Number_[];
  ends: Map<Number_, NonNullable<Piece['end']>>;
  odd: Odd[];
};

type StepEntry = EntryOf<'step'>;

/**
 * Steps whose clock goes with the piece from place to place: an ice bath and then the walk-in are one cooling,
 * also for the one pan that was moved alone. Held food that is moved alone begins a step of its own in the new
 * cabinet, judged by its own looks (docs/judge.md, section 2, "Places").
 */
const travels = (step: RunShape['step']): boolean =>
  step === 'cooling' || step === 'reheat' || step === 'cook';

/** One batch's steps, folded one after another. */
class StepFold {
  readonly runs: RunShape[] = [];
  readonly ends = new Map<Number_, NonNullable<Piece['end']>>();
  readonly odd: Odd[] = [];
  private readonly count: number | null;
  private readonly known = new Set<Number_>();
  private readonly present = new Map<Number_, { run: RunShape; member: Member }>();

  constructor(count: number | null) {
    this.count = count;
    if (count === null) this.known.add(null);
    else for (let piece = 1; piece <= count; piece += 1) this.known.add(piece);
  }

  pieces(): Number_[] {
    return [...this.known].sort((a, b) => (a ?? 0) - (b ?? 0));
  }

  take(entry: StepEntry): void {
    const at = whenOf(entry);
    const named = this.named(entry, at);
    if (entry.body.step === 'gone') for (const piece of named) this.end(piece, at, entry);
    else this.enter(named, at, entry);
  }

  private note(entry: StepEntry, at: number, key: string, piece: Number_): void {
    this.odd.push({ entry: entry.id, at, key, values: { piece: piece ?? '–', step: entry.body.step } });
  }

  /** The pieces that an entry means: those that are not gone. A number that the batch lacks is taken, and said. */
  private named(entry: StepEntry, at: number): Number_[] {
    const { pieces } = entry.body;
    if (pieces === null) return this.pieces().filter((piece) => !this.ends.has(piece));
    const numbers = [...new Set(pieces)].sort((a, b) => a - b);
    for (const piece of numbers) {
      if (this.ends.has(piece)) this.note(entry, at, 'step_of_gone_piece', piece);
      else if (!this.known.has(piece)) this.admit(entry, at, piece);
    }
    return numbers.filter((piece) => !this.ends.has(piece));
  }

  /** A kettle parted into pans has pans from then on; its own step ends. */
  private admit(entry: StepEntry, at: number, piece: number): void {
    if (this.count !== null) this.note(entry, at, 'piece_not_in_batch', piece);
    this.known.add(piece);
    if (!this.known.has(null)) return;
    this.leave(null, at);
    this.known.delete(null);
  }

  private order(pieces: readonly number[] | null): Number_[] {
    return pieces === null ? this.pieces() : [...pieces];
  }

  private leave(piece: Number_, at: number): void {
    const here = this.present.get(piece);
    if (!here) return;
    here.member.until = at;
    this.present.delete(piece);
  }

  private end(piece: Number_, at: number, entry: StepEntry): void {
    const { reason, amount } = entry.body.details;
    this.leave(piece, at);
    this.ends.set(piece, { at, reason: reason ?? 'other', amount: amount ?? null, by: entry.by });
  }

  private active(run: RunShape): Number_[] {
    return [...this.present].filter(([, here]) => here.run === run).map(([piece]) => piece);
  }

  /** The run of this step that goes on in this place, newest first, which none of the piece's past is in. */
  private openRun(entry: StepEntry, piece: Number_, but: RunShape | null): RunShape | undefined {
    return this.runs.findLast(
      (run) =>
        run !== but &&
        run.step === entry.body.step &&
        run.equipment === entry.body.equipment &&
        this.active(run).length > 0 &&
        !run.members.some((member) => member.piece === piece),
    );
  }

  private newRun(entry: StepEntry, at: number): RunShape {
    const { batch, step, equipment, details } = entry.body;
    const run: RunShape = {
      key: entry.id,
      batch,
      step,
      equipment,
      places: [{ equipment, at }],
      details,
      members: [],
    };
    this.runs.push(run);
    return run;
  }

  private enter(named: Number_[], at: number, entry: StepEntry): void {
    const rest = this.moveWhole(named, at, entry);
    let fresh: RunShape | null = null;
    for (const piece of rest) {
      const here = this.present.get(piece);
      const joined: RunShape | undefined = this.openRun(entry, piece, here?.run ?? null);
      if (!joined) fresh ??= this.newRun(entry, at);
      const run = joined ?? fresh;
      if (run) this.put(piece, run, at, entry);
    }
  }

  /** Pieces whose step goes on: nothing changed, or the whole group was moved. Returns those that begin anew. */
  private moveWhole(named: Number_[], at: number, entry: StepEntry): Number_[] {
    const { step, equipment, details } = entry.body;
    const done = new Set<Number_>();
    const runs = new Set(named.flatMap((piece) => this.present.get(piece)?.run ?? []));
    for (const run of runs) {
      if (run.step !== step) continue;
      const active = this.active(run);
      const moved = active.filter((piece) => named.includes(piece));
      const same = equipment === null || equipment === run.equipment;
      const whole = moved.length === active.length;
      const meets = moved.some((piece) => this.openRun(entry, piece, run));
      if (!same && (!whole || meets)) continue;
      if (!same) {
        run.equipment = equipment;
        run.places.push({ equipment, at });
      }
      run.details = { ...run.details, ...details };
      for (const piece of moved) done.add(piece);
    }
    return named.filter((piece) => !done.has(piece));
  }

  private put(piece: Number_, run: RunShape, at: number, entry: StepEntry): void {
    const here = this.present.get(piece);
    const carried = here && here.run.step === run.step && travels(run.step) ? here : null;
    if (carried) {
      // The clock goes with the piece: its whole cooling is judged where it is now.
      carried.run.members = carried.run.members.filter((member) => member !== carried.member);
      run.members.push(carried.member);
      if (run.key === entry.id) run.details = { ...carried.run.details, ...run.details };
      this.present.set(piece, { run, member: carried.member });
      return;
    }
    this.leave(piece, at);
    const { pieces, details } = entry.body;
    const massLb = details.raw_mass_lb?.[this.order(pieces).indexOf(piece)] ?? null;
    const member: Member = { piece, from: at, until: null, entry: entry.id, details, massLb };
    run.members.push(member);
    run.details = { ...run.details, ...entry.body.details };
    this.present.set(piece, { run, member });
  }
}

/**
 * Groups a batch's step entries (in order) into runs: one group of pieces in one place is one step.
 * A step of a piece lasts until the next step entry that names it; moving a whole group does not end it; pieces
 * that are brought into the same place one after another are one run, each with its own start.
 * @param count pieces of the batch, null = not counted
 */
export function foldSteps(count: number | null, entries: readonly StepEntry[]): Steps {
  const fold = new StepFold(count);
  for (const entry of entries) fold.take(entry);
  return {
    runs: fold.runs.filter((run) => run.members.length > 0),
    pieces: fold.pieces(),
    ends: fold.ends,
    odd: fold.odd,
  };
}
