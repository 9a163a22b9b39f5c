import type { Batch, JudgedRun, Look } from '#lib/fold/book.ts';
import type { Stages } from '#lib/judge/answer.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import { beyondFigure } from './beyond-figure.ts';
import { lineDocOf } from './day-line.ts';
import type { BatchDoc, CanonicalDay, ReadingDoc, RunDoc } from './day-schema.ts';
import { type DayScope, inDay, iso, isoOrNull, readingDocOf } from './day-scope.ts';
import { stageDocOf } from './day-stage.ts';

/** The batches that lived in the day, in the order in which they began; of each, what happened in the day. */
export function batchDocs(scope: DayScope): BatchDoc[] {
  return [...scope.book.batches.values()]
    .filter((batch) => livedInDay(scope, batch))
    .sort((a, b) => a.at - b.at || a.name.localeCompare(b.name, 'en') || a.id.localeCompare(b.id, 'en'))
    .map((batch) => batchDoc(scope, batch));
}

const runsInDay = (scope: DayScope, batch: Batch): JudgedRun[] =>
  batch.runs
    .filter(
      (run) =>
        run.start < scope.frame.to &&
        run.start <= scope.frame.asOf &&
        (run.end === null || run.end > scope.frame.from || inDay(scope, run.start)),
    )
    .sort((a, b) => a.start - b.start || a.key.localeCompare(b.key, 'en'));

function livedInDay(scope: DayScope, batch: Batch): boolean {
  if (batch.at >= scope.frame.to || batch.at > scope.frame.asOf) return false;
  return inDay(scope, batch.at) || runsInDay(scope, batch).length > 0;
}

function batchDoc(scope: DayScope, batch: Batch): BatchDoc {
  const runs = runsInDay(scope, batch);
  const limits = scope.book.limits.profile;
  const named = new Map<string, ReadingDoc>();
  for (const run of runs) {
    const earlier = new Set(run.before);
    for (const look of [...run.looks, ...run.before]) {
      // A look that two steps share (it stands at the end of one and the start of the other) is of the first.
      const known = named.get(look.id);
      if (known && (known.beyond !== null || earlier.has(look))) continue;
      named.set(
        look.id,
        readingDocOf(scope, look, earlier.has(look) ? null : beyondFigure(run, look, limits)),
      );
    }
  }
  const docs = runs.map((run) => runDoc(scope, run));
  const pick = (ids: readonly string[]): ReadingDoc[] =>
    [...new Set(ids)]
      .map((id) => named.get(id))
      .filter((doc) => doc !== undefined)
      .sort((a, b) => Date.parse(a.at) - Date.parse(b.at) || a.seq - b.seq);
  return {
    id: batch.id,
    name: batch.name,
    food: batch.food && { name: batch.food.name, name_es: batch.food.name_es, class: batch.food.class },
    pieces: batch.count,
    made: batch.made,
    source: batch.source.map((source) => ({
      batch: source.batch,
      name: source.batch === null ? null : (scope.book.batches.get(source.batch)?.name ?? null),
      pieces: source.pieces,
      words: source.words,
    })),
    note: batch.note,
    at: iso(scope, batch.at),
    runs: docs,
    readings: pick(docs.flatMap((run) => run.readings)),
    earlier: pick(docs.flatMap((run) => run.earlier)),
    standing: batch.pieces.map((piece) => ({ piece: piece.number, standing: piece.standing })),
    ends: batch.pieces.flatMap((piece) =>
      piece.end && inDay(scope, piece.end.at)
        ? [
            {
              piece: piece.number,
              at: iso(scope, piece.end.at),
              reason: piece.end.reason,
              amount: piece.end.amount,
            },
          ]
        : [],
    ),
  };
}

function runDoc(scope: DayScope, run: JudgedRun): RunDoc {
  const stages = stagesDoc(scope, run, run.stages);
  const byPiece = run.byPiece.map(({ piece, stages }) => ({ piece, stages: stagesDoc(scope, run, stages) }));
  const decides = new Set(
    [stages, ...byPiece.map((one) => one.stages)].flatMap((all) =>
      Object.values(all).flatMap((stage) => stage.rests_on),
    ),
  );
  const ids = (looks: readonly Look[]): string[] => looks.map((look) => look.id);
  return {
    id: run.key,
    step: run.step,
    pieces: run.pieces,
    equipment: run.equipment,
    places: run.places.map((place) => ({ equipment: place.equipment, at: iso(scope, place.at) })),
    members: run.members.map((member) => ({
      piece: member.piece,
      from: iso(scope, member.from),
      until: isoOrNull(scope, member.until),
    })),
    start: iso(scope, run.start),
    end: isoOrNull(scope, run.end !== null && run.end <= scope.frame.asOf ? run.end : null),
    plan_interval_min: run.planIntervalMin,
    details: JSON.parse(JSON.stringify(run.details)),
    stages,
    by_piece: byPiece,
    not_judged: run.reason,
    line: lineDocOf(scope, run),
    readings: ids(run.looks.filter((look) => inDay(scope, look.at))),
    earlier: ids(
      [...run.before, ...run.looks].filter((look) => !inDay(scope, look.at) && decides.has(look.id)),
    ),
  };
}

const stagesDoc = (scope: DayScope, run: JudgedRun, stages: Stages): RunDoc['stages'] =>
  Object.fromEntries(
    stageEntries(stages).map(([name, stage]) => [name, stageDocOf(scope, run, name, stage)]),
  );

/** Stages that the record leaves open to doubt, with the reasons; `between_readings` of hand readings is one of them. */
export function notShown(batches: readonly BatchDoc[]): CanonicalDay['not_shown'] {
  return batches.flatMap((batch) =>
    batch.runs.flatMap((run) =>
      Object.entries(run.stages)
        .filter(([, stage]) => stage.verdict === 'not_shown')
        .map(([name, stage]) => ({
          batch: batch.id,
          run: run.id,
          step: run.step,
          stage: name,
          pieces: piecesOf(run, name, 'not_shown') ?? run.pieces,
          section: stage.section,
          open: stage.open,
          reasons: stage.reasons,
        })),
    ),
  );
}

/** The numbered pieces whose own stage has this verdict; null when none is numbered. */
export function piecesOf(run: RunDoc, stage: string, verdict: string): number[] | null {
  const numbers = run.by_piece
    .filter((one) => one.stages[stage]?.verdict === verdict)
    .map((one) => one.piece)
    .filter((piece) => piece !== null);
  return numbers.length === 0 ? null : numbers.sort((a, b) => a - b);
}

export const notJudged = (batches: readonly BatchDoc[]): CanonicalDay['not_judged'] =>
  batches.flatMap((batch) =>
    batch.runs.flatMap((run) =>
      run.not_judged === null
        ? []
        : [{ batch: batch.id, run: run.id, step: run.step, reason: run.not_judged }],
    ),
  );
