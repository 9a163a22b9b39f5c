import { describe, expect, it, test } from 'vitest';
import type { StageName } from '#lib/judge/answer.ts';
import { explainStep, type StageProof } from '#lib/judge/explain.ts';
import { dateProof } from '#lib/judge/explain-days.ts';
import { proofSteps } from '#lib/judge/explain-words.ts';
import type { RuleKind, StepRecord } from '#lib/judge/record.ts';
import { blankStage } from '#lib/judge/stage.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { profile } from '#lib/limits/profiles.ts';
import { sheetWords } from '#lib/sheet/sheet-words.ts';
import { at, fda, reading, record } from './records.ts';

function limits(id: string): Profile {
  const found = profile(id);
  if (found === null) throw new Error(`tests: ${id} is missing`);
  return found;
}

type Row = { kind: RuleKind; record: StepRecord; profile?: Profile; figure: string | null };

const hold = record([reading(0, 150), reading(60, 140)], { planIntervalMin: 120 });
const cool = record([reading(0, 140), reading(10, 134), reading(100, 69), reading(300, 40)]);
const timed = record([reading(-1, 40, { spot: 'warmest' }), reading(60, 60)], {
  start: at(0),
  asOf: at(60),
  facts: { mode: '6h', removed_at: at(0), written_procedure: true, marked: true, gone_at: null },
});
const twice = record(
  [reading(30, 120), reading(90, 69), reading(200, 40), reading(400, 166, { held_s: 15 })],
  {
    class: 'poultry',
    facts: { heat_from: at(0), heat_to: at(30), final_from: at(390), written: true, approved: true },
  },
);
const roast = record([reading(0, 60), reading(600, 145, { held_s: 300 })], {
  class: 'intact_roast',
  facts: { oven: 'still_dry', oven_temp: 350, mass_lb: 9 },
});
const heat = record([reading(0, 40, { spot: 'warmest' }), reading(1, 50), reading(60, 166, { held_s: 15 })]);

/** A record of which each stage is judged, and a figure that its proof must name. */
const rows: Record<Exclude<StageName, 'date_mark'>, Row> = {
  at_readings: { kind: 'hot_hold', record: hold, figure: '135 °F' },
  between_readings: { kind: 'hot_hold', record: hold, figure: '135 °F' },
  house_plan_interval: { kind: 'hot_hold', record: hold, figure: '2 h' },
  record_interval: { kind: 'hot_hold', record: hold, profile: limits('ca_nb'), figure: null },
  hold_length: { kind: 'hot_hold', record: hold, profile: limits('br'), figure: null },
  stage_1: { kind: 'cooling', record: cool, figure: '70 °F' },
  stage_2: { kind: 'cooling', record: cool, profile: limits('fsis_appendix_b_2_2021'), figure: null },
  total: { kind: 'cooling', record: cool, figure: '41 °F' },
  ambient_total: {
    kind: 'cooling',
    record: { ...cool, facts: { ingredients: 'ambient', prepared_at: at(0) } },
    figure: '41 °F',
  },
  temperature: { kind: 'reheat', record: heat, figure: '165 °F' },
  time: { kind: 'reheat', record: heat, figure: '2 h' },
  oven: { kind: 'cook', record: roast, figure: '350 °F' },
  come_up: { kind: 'cook', record: roast, profile: limits('fsis_appendix_a'), figure: '130 °F' },
  procedure: { kind: 'time_control', record: timed, figure: null },
  marking: { kind: 'time_control', record: timed, figure: null },
  start: { kind: 'time_control', record: timed, figure: '41 °F' },
  warmth: { kind: 'time_control', record: timed, figure: '70 °F' },
  initial_heating: { kind: 'noncontinuous', record: twice, figure: '1 h' },
  cooling: { kind: 'noncontinuous', record: twice, figure: '70 °F' },
  final_cook: { kind: 'noncontinuous', record: twice, figure: '165 °F' },
};

const wordsOf = (proof: StageProof, kind: string, language: 'en' | 'es'): string[] =>
  proofSteps(proof, kind, {
    say: sheetWords(language),
    time: (ms) => new Date(ms).toISOString().slice(11, 16),
  }).flatMap(({ text, under }) => [text, ...under]);

const opening = { en: /^The (rule|house plan): /, es: /^(La regla|El plan de la casa): / };
const closing = { en: 'The conclusion: ', es: 'La conclusión: ' };

function expectProof(proof: StageProof, kind: string, figure: string | null): void {
  for (const language of ['en', 'es'] as const) {
    const lines = wordsOf(proof, kind, language);
    expect(lines[0]).toMatch(opening[language]);
    if (proof.name !== 'house_plan_interval') expect(lines[0]).toContain(proof.stage.section);
    if (figure !== null) expect(lines[0]).toContain(figure);
    const end = lines.findIndex((line) => line.startsWith(closing[language]));
    expect(end).toBeGreaterThan(0);
    // What the verdict claims stands right under it.
    const claims = sheetWords(language);
    expect(proof.stage.verdict).not.toBe('not_applicable');
    expect(lines[end + 1]).toBeTruthy();
    expect(lines.join('\n')).not.toMatch(/\b(explain|judge|common|batch)\.[a-z_]+/);
    expect(lines.join('\n')).toContain(claims(`judge.verdict.${proof.stage.verdict}`));
  }
}

describe('every stage that a rule can give has a proof in words: its figure, what was seen, its conclusion', () => {
  test.each(Object.entries(rows))('%s', (name, row) => {
    const { stages } = explainStep(row.kind, row.record, row.profile ?? fda);
    const proof = stages.find((one) => one.name === name);
    expect(proof).toBeDefined();
    if (proof) expectProof(proof, row.kind, row.figure);
  });

  test('date_mark', () => {
    const marked = { earliest: '2026-10-16', latest: '2026-10-16', frozen: [], outside: null };
    const stage = { ...blankStage('3-501.17(A)'), verdict: 'broken' as const, last_day: '2026-10-22' };
    const days = [
      {
        piece: null,
        verdict: stage.verdict,
        last_day: '2026-10-22',
        marked,
        today: '2026-10-23',
        unfrozen: null,
      },
    ];
    const proof = dateProof(stage, days, fda);
    expectProof(proof, 'cold_hold', '7 ');
    // The 16th is day 1, so the 23rd is day 8.
    expect(wordsOf(proof, 'cold_hold', 'en')).toContain('Counted from 2026-10-16, 2026-10-23 is day 8.');
    expect(wordsOf(proof, 'cold_hold', 'es')).toContain(
      'Contado desde el 2026-10-16, el 2026-10-23 es el día 8.',
    );
  });
});

describe('the count of days in a proof', () => {
  const today = (date: string, frozen: [string, string | null][]): string | undefined => {
    const marked = { earliest: '2026-10-01', latest: '2026-10-01', frozen, outside: null };
    const stage = { ...blankStage('3-501.17(A)'), verdict: 'kept' as const };
    const days = [{ piece: 2, verdict: stage.verdict, last_day: null, marked, today: date, unfrozen: null }];
    return wordsOf(dateProof(stage, days, fda), 'cold_hold', 'en').find((line) => line.startsWith('Counted'));
  };
  it.each([
    ['2026-10-13', [['2026-10-03', '2026-10-10']], 7], // 1, 2, 3 and 10, 11, 12, 13
    ['2026-10-03', [['2026-10-03', null]], 3],
    ['2026-10-09', [['2026-10-03', null]], 3], // it stands still
    ['2026-10-04', [['2026-10-02', '2026-10-03']], 4], // in and out on following days: both count
    ['2026-10-01', [], 1],
  ] as [string, [string, string | null][], number][])('on %s, frozen %j: day %i', (date, frozen, number) => {
    expect(today(date, frozen)).toBe(`Counted from 2026-10-01, ${date} is day ${number}.`);
  });
});
