import { describe, expect, it } from 'vitest';
import { profileOf } from '#lib/fold/ask.ts';
import { explainRun } from '#lib/fold/explain-run.ts';
import { foldBook } from '#lib/fold/fold-book.ts';
import { proofSteps } from '#lib/judge/explain-words.ts';
import { stageNames } from '#lib/judge/stage.ts';
import { sheetWords } from '#lib/sheet/sheet-words.ts';
import { demoEntries, saturday } from './demo-book.ts';

const book = foldBook(demoEntries, saturday);
const profile = profileOf(book);
if (profile === null) throw new Error('no limits');
const proofs = [...book.batches.values()].flatMap(({ runs }) =>
  runs.flatMap((run) =>
    stageNames(run.stages).map((name) => ({ run, name, proof: explainRun(run, name, profile) })),
  ),
);

describe('the proof of a run of the book', () => {
  it('exists for every stage that is judged, and concludes what the book says', () => {
    expect(proofs.length).toBeGreaterThan(20);
    for (const { run, name, proof } of proofs) expect(proof?.stage).toEqual(run.stages[name]);
  });

  it('shows no piece of a kept stage that was not kept itself, and some broken piece of a broken one', () => {
    for (const { proof } of proofs) {
      const verdicts = proof?.pieces.map(({ verdict }) => verdict) ?? [];
      if (verdicts.length === 0) continue;
      if (proof?.stage.verdict === 'kept') expect(new Set(verdicts)).toEqual(new Set(['kept']));
      if (proof?.stage.verdict === 'broken') expect(verdicts).toContain('broken');
    }
    expect(proofs.some(({ proof }) => proof?.stage.verdict === 'broken')).toBe(true);
  });

  it('has words for everything in both languages', () => {
    for (const language of ['en', 'es'] as const) {
      const voice = {
        say: sheetWords(language),
        time: (ms: number) => new Date(ms).toISOString().slice(11, 16),
      };
      const text = proofs
        .flatMap(({ run, proof }) => (proof && run.asked ? proofSteps(proof, run.asked.kind, voice) : []))
        .flatMap((step) => [step.text, ...step.under])
        .join('\n');
      expect(text).not.toMatch(/\b(explain|judge|common)\.[a-z_]+/);
    }
  });
});
