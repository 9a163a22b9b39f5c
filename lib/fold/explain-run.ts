import type { StageName, Verdict } from '#lib/judge/answer.ts';
import { explainStep, type StageProof } from '#lib/judge/explain.ts';
import { type DaysProof, dateProof } from '#lib/judge/explain-days.ts';
import type { Profile } from '#lib/limits/profile.ts';
import type { JudgedRun } from './book.ts';

const worstFirst: readonly Verdict[] = ['broken', 'not_shown', 'kept', 'not_applicable'];

/**
 * The proof of one stage of a run: the run's own stage as the book has it, with each piece's readings as they were
 * judged for it. Null where the run has no such stage, or no rule judged it.
 */
export function explainRun(run: JudgedRun, name: StageName, profile: Profile): StageProof | null {
  const stage = run.stages[name];
  if (stage === undefined || run.asked === undefined) return null;
  if (name === 'date_mark') return dateProof(stage, daysOf(run), profile);
  const { kind, records } = run.asked;
  const own = records.flatMap((record) =>
    explainStep(kind, record, profile).stages.filter((one) => one.name === name),
  );
  const doubted = own.some((one) => one.without_suspect !== null);
  const without = own.map((one) => one.without_suspect ?? one.stage.verdict);
  const [told] = own.filter((one) => one.stage.verdict === stage.verdict);
  const unseen = own.find((one) => one.gap && one.stage.longest_gap_min === stage.longest_gap_min);
  return {
    name,
    stage,
    figures: own[0]?.figures ?? [],
    pieces: own.flatMap(({ pieces }) => pieces),
    ...(told?.defences === undefined ? {} : { defences: told.defences }),
    ...(unseen?.gap == null ? {} : { gap: unseen.gap }),
    air: own.reduce((most, { air }) => Math.max(most, air), 0),
    without_suspect: doubted ? (worstFirst.find((verdict) => without.includes(verdict)) ?? null) : null,
  };
}

const daysOf = ({ marked, byPiece }: JudgedRun): DaysProof[] =>
  (marked ?? []).flatMap(({ piece, marked: from, today }): DaysProof[] => {
    const own = byPiece.find((one) => one.piece === piece)?.stages.date_mark;
    if (own === undefined) return [];
    const { verdict, last_day } = own;
    return [{ piece, verdict, last_day: last_day ?? null, marked: from, today, unfrozen: null }];
  });
