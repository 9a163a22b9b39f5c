import { canonicalText } from '#shared/envelope.ts';
import type { BatchDoc, CanonicalDay, RunDoc, StageDoc } from './day-schema.ts';
import { stagesInOrder } from './stage-order.ts';

/** One stage that other limits judge otherwise. null = those limits have no such stage. */
export type StageOtherwise = {
  kind: 'stage';
  batch: BatchDoc;
  run: RunDoc;
  pieces: number[] | null; // null = not counted, or all of the run
  stage: string;
  is: StageDoc | null;
  would: StageDoc | null;
};

/** A check of a thermometer that other limits judge otherwise: their accuracy is another. */
export type CheckOtherwise = {
  kind: 'check';
  thermometer: string;
  at: string;
  is: 'kept' | 'broken';
  would: 'kept' | 'broken';
  section: { is: string; would: string };
};

export type Otherwise = StageOtherwise | CheckOtherwise;

/**
 * What other limits would say of one and the same day: each stage, piece by piece, and each check whose verdict is not
 * the same, in the order of the night. Both days are made from the same entries; what does not differ is left out.
 * @param is the day as it is judged
 * @param would the same day under the other limits
 */
export function judgedOtherwise(is: CanonicalDay, would: CanonicalDay): Otherwise[] {
  const runs = new Map(would.batches.flatMap((batch) => batch.runs.map((run) => [run.id, run])));
  const stages = is.batches.flatMap((batch) =>
    batch.runs.flatMap((run) => {
      const other = runs.get(run.id);
      return other === undefined ? [] : runOtherwise(batch, run, other);
    }),
  );
  return [...stages, ...checksOtherwise(is, would)];
}

function runOtherwise(batch: BatchDoc, run: RunDoc, other: RunDoc): StageOtherwise[] {
  const both: RunDoc['stages'] = { ...other.stages, ...run.stages };
  for (const each of [...other.by_piece, ...run.by_piece])
    for (const [name, stage] of Object.entries(each.stages)) both[name] ??= stage;
  return stagesInOrder({ stages: both }).flatMap(([stage]) => stageOtherwise({ batch, run, other, stage }));
}

type Asked = { batch: BatchDoc; run: RunDoc; other: RunDoc; stage: string };
type Own = { piece: number | null; is: StageDoc | null; would: StageDoc | null };

/** The pieces of which it is judged otherwise, those with the same two verdicts on one line. */
function stageOtherwise({ batch, run, other, stage }: Asked): StageOtherwise[] {
  const own = ownOf(run, other, stage).filter(({ is, would }) => is?.verdict !== would?.verdict);
  const groups = Map.groupBy(own, ({ is, would }) => canonicalText([saidOf(is), saidOf(would)]));
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    return first === undefined
      ? []
      : [{ kind: 'stage', batch, run, stage, pieces: numbersOf(group), is: first.is, would: first.would }];
  });
}

/** What makes two pieces one line: verdict, section and figures; their lengths and looks are their own. */
const saidOf = (stage: StageDoc | null) =>
  stage && { verdict: stage.verdict, section: stage.section, limit: stage.limit, limit_min: stage.limit_min };

/** A run judged piece by piece has each piece's own verdict; else the one of the whole. */
function ownOf(run: RunDoc, other: RunDoc, stage: string): Own[] {
  const pieces = [...new Set([...run.by_piece, ...other.by_piece].map(({ piece }) => piece))];
  const at = (doc: RunDoc, piece: number | null): StageDoc | null =>
    doc.by_piece.find((one) => one.piece === piece)?.stages[stage] ?? null;
  const own = pieces.map((piece) => ({ piece, is: at(run, piece), would: at(other, piece) }));
  // Some stages are of the run as a whole (who looked in time): no piece has one of its own.
  return own.some(({ is, would }) => is !== null || would !== null)
    ? own
    : [{ piece: null, is: run.stages[stage] ?? null, would: other.stages[stage] ?? null }];
}

const numbersOf = (group: readonly Own[]): number[] | null => {
  const numbers = group.flatMap(({ piece }) => (piece === null ? [] : [piece]));
  return numbers.length === 0 ? null : numbers.sort((a, b) => a - b);
};

function checksOtherwise(is: CanonicalDay, would: CanonicalDay): CheckOtherwise[] {
  const checksOf = (day: CanonicalDay) =>
    day.thermometers.flatMap((one) =>
      [one.check_before, ...one.checks, one.check_after].flatMap((check) =>
        check === null ? [] : [{ thermometer: one.id, check }],
      ),
    );
  const other = new Map(checksOf(would).map(({ check }) => [check.id, check]));
  return checksOf(is).flatMap(({ thermometer, check }): CheckOtherwise[] => {
    const then = other.get(check.id);
    if (then === undefined || then.verdict === check.verdict) return [];
    return [
      {
        kind: 'check',
        thermometer,
        at: check.at,
        is: check.verdict,
        would: then.verdict,
        section: { is: check.section, would: then.section },
      },
    ];
  });
}
