import { describe, expect, it, test } from 'vitest';
import { profile } from '#lib/limits/profiles.ts';
import { explainDay } from '#lib/sheet/explain-day.ts';
import { sheetPdf } from '#lib/sheet/pdf/sheet-document.ts';
import { dayOfDemo, friday, saturdayDay } from './demo-day.ts';
import { textsOf } from './pdf-text.ts';

const fda = profile('fda_2022');
if (fda === null) throw new Error('no limits');
const modules = new URL('../../node_modules', import.meta.url).pathname;
const printed = {
  hash: '3f9a'.repeat(16),
  revision: 2,
  signed: null,
  head: null,
  printedAt: '2026-10-18T13:10:00-05:00',
  confirming: [],
};

describe.each([friday, saturdayDay])('the proofs of %s', (name) => {
  const day = dayOfDemo(name);
  const all = day.batches.flatMap((batch) =>
    batch.runs.flatMap((run) =>
      Object.keys(run.stages).map((stage) => ({
        run,
        stage,
        proof: explainDay(day, batch, run, stage, fda),
      })),
    ),
  );
  it('conclude what is stored, and the document alone gives no other verdict', () => {
    expect(all.length).toBeGreaterThan(5);
    for (const { run, stage, proof } of all) {
      expect(proof?.proof.stage.verdict).toBe(run.stages[stage]?.verdict);
      expect([run.step, stage, proof?.otherwise]).toEqual([run.step, stage, null]);
    }
  });
});

test('a stored verdict that the document does not bear out stands, and that is said beside it', () => {
  const day = dayOfDemo(saturdayDay);
  const found = [dayOfDemo(friday), day].flatMap((one) =>
    one.batches.flatMap((batch) => batch.runs.map((run) => ({ one, batch, run }))),
  );
  const held = found.find(
    ({ one, run }) => run.stages.at_readings?.verdict === 'kept' && run.end !== null && run.start >= one.from,
  );
  if (held === undefined) throw new Error('no kept hold');
  const { one, batch, run } = held;
  const stage = run.stages.at_readings;
  if (stage === undefined) throw new Error('no stage');
  const altered = {
    ...run,
    stages: { ...run.stages, at_readings: { ...stage, verdict: 'broken' as const } },
  };
  expect(explainDay(one, batch, altered, 'at_readings', fda)).toMatchObject({
    proof: { stage: { verdict: 'broken' } },
    otherwise: 'kept',
  });
});

describe('the appendix of the printed sheet', () => {
  it.each(['en', 'es'] as const)('stands there in %s with every message said', async (language) => {
    const bytes = await sheetPdf(dayOfDemo(friday), printed, { paper: 'letter', language, modules });
    const text = (await textsOf(bytes))
      .map((page) => page.map((one) => one.text).join(' '))
      .join(' ')
      .replace(/\s+/g, ' ');
    expect(text).toContain(
      language === 'en' ? 'How each verdict was reached' : 'Cómo se llegó a cada resultado',
    );
    expect(text).toContain(language === 'en' ? '1. The rule: 3-5' : '1. La regla: 3-5');
    expect(text).not.toMatch(/\b(explain|judge|sheet|common)\.[a-z_]+\b/);
  });
});
