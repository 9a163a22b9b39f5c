import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { stepInputs } from '#bin/reference/case.ts';
import { profileOf } from '#bin/reference/profile.ts';
import { bracketed } from '#lib/judge/brackets.ts';
import { explainStep } from '#lib/judge/explain.ts';
import { judgePieces, judgeStep } from '#lib/judge/judge.ts';
import type { RuleKind } from '#lib/judge/record.ts';
import { profile } from '#lib/limits/profiles.ts';
import { msOf } from '#shared/time.ts';

type Case = { id: string; kind: string; inputs: Record<string, unknown> };
const kinds = new Set([
  'hot_hold',
  'cooling',
  'reheat',
  'cook',
  'cold_hold',
  'time_control',
  'noncontinuous',
]);
const cases = ['20-limits.json', '21-more-limits.json'].flatMap(
  (name): Case[] => JSON.parse(readFileSync(new URL(`../reference/${name}`, import.meta.url), 'utf8')).cases,
);
const steps = cases.filter(({ kind }) => kinds.has(kind));

function asked({ kind, inputs }: Case) {
  const step = stepInputs.parse(inputs);
  const limits = profileOf(step.profile, step.profile_figures);
  if (limits === null) throw new Error('no profile');
  const record = {
    food: step.food,
    facts: step.facts,
    planIntervalMin: step.plan_interval_min,
    start: step.start === null ? null : msOf(step.start),
    end: step.end === null ? null : msOf(step.end),
    asOf: msOf(step.as_of),
    readings: step.readings.map(({ t, ...reading }) => ({ ...reading, at: msOf(t) })),
  };
  return { kind: kind as RuleKind, record, limits };
}

describe('a proof concludes what the judge concluded, in every reference case of a step', () => {
  it('and there are such cases', () => expect(steps.length).toBeGreaterThan(120));
  test.each(steps.map((one) => [one.id, one] as const))('%s', (_, one) => {
    const { kind, record, limits } = asked(one);
    const proof = explainStep(kind, record, limits);
    const stages = judgeStep(kind, record, limits);
    expect(Object.fromEntries(proof.stages.map(({ name, stage }) => [name, stage]))).toEqual(stages);
    const alone = judgePieces(kind, record, limits);
    for (const { name, stage, pieces, figures } of proof.stages) {
      for (const each of pieces) {
        const own = alone.find(({ piece }) => piece === each.piece)?.stages[name];
        expect(each.verdict).toBe(own?.verdict);
        // The lengths that the shown brackets give are the judge's own lengths.
        if (each.brackets !== null && stage.limit_min !== null) {
          const at = (end: 's_lo' | 's_hi' | 'm_lo' | 'm_hi') => each.brackets?.[end]?.at ?? null;
          const shown = { sLo: at('s_lo'), sHi: at('s_hi'), mLo: at('m_lo'), mHi: at('m_hi') };
          expect(bracketed(shown, stage.limit_min, false)).toMatchObject({
            longest_min: own?.longest_min,
            shortest_min: own?.shortest_min,
          });
        }
        // A hold is broken by exactly the food readings that are shown on the wrong side.
        if (name === 'at_readings')
          expect(each.readings.some(({ side }) => side === 'misses')).toBe(each.verdict === 'broken');
      }
      if (stage.limit !== null && limits.id === 'fda_2022') expect(figures.length).toBeGreaterThan(0);
    }
  });
});

const fda = profile('fda_2022');
if (fda === null) throw new Error('no limits');
const at = (clock: string): number => msOf(`2026-05-08T${clock}:00Z`);
const look = (clock: string, value: number, more = {}) => ({
  at: at(clock),
  value,
  unit: 'degF' as const,
  spot: 'core' as const,
  piece: null,
  probe: null,
  held_s: null,
  source: 'hand' as const,
  suspect: false,
  correction: null,
  ...more,
});
const record = (readings: ReturnType<typeof look>[], more = {}) => ({
  food: { class: 'beef_whole' as const, pieces: null },
  facts: {},
  planIntervalMin: null,
  start: null,
  end: null,
  asOf: at('12:00'),
  readings,
  ...more,
});

describe('what a proof shows of a cooling', () => {
  // 140 at 02:00 and 134 at 02:10 bracket the start; 75 at 03:50 and 70 at 04:00 the 70 °F: at most 120, at least 100 minutes.
  const proof = explainStep(
    'cooling',
    record([look('02:00', 140), look('02:10', 134), look('03:50', 75), look('04:00', 70)]),
    fda,
  );
  const stage = proof.stages.find(({ name }) => name === 'stage_1');
  it('which reading serves as which end, and both lengths', () => {
    expect(stage?.pieces[0]?.readings.map(({ serves }) => serves)).toEqual([
      ['s_lo'],
      ['s_hi'],
      ['m_lo'],
      ['m_hi'],
    ]);
    expect(stage?.pieces[0]).toMatchObject({ verdict: 'kept', longest_min: 120, shortest_min: 100 });
    expect(stage?.pieces[0]?.readings.map(({ decides }) => decides)).toEqual([true, false, false, true]);
  });
  it('its figures as published, with how they were checked and how they bind', () => {
    expect(stage?.figures.map(({ role, value, minutes, force }) => [role, value, minutes, force])).toEqual([
      ['limit', { degF: 70, degC: 21 }, null, 'model'],
      ['time', null, 120, 'model'],
      ['start', { degF: 135, degC: 57 }, null, 'model'],
    ]);
    expect(stage?.figures.every(({ checked }) => ['read', 'second_hand', 'memory'].includes(checked))).toBe(
      true,
    );
  });
});

describe('what a proof shows of a hold', () => {
  it('what each place can prove, and the side by the unit of the reading', () => {
    const proof = explainStep(
      'hot_hold',
      record([
        look('01:00', 135, { spot: 'edge' }),
        look('02:00', 57, { unit: 'degC', spot: 'core' }),
        look('03:00', 134.9, { spot: 'warmest' }),
      ]),
      fda,
    );
    const [piece] = proof.stages[0]?.pieces ?? [];
    expect(piece?.readings.map(({ proves, side, against }) => [proves, side, against?.value])).toEqual([
      ['proves', 'keeps', 135],
      ['proves', 'keeps', 57],
      ['can_only_break', 'misses', 135],
    ]);
  });
  it('what the verdict would be without a thermometer in doubt', () => {
    const readings = [look('01:00', 150), look('02:00', 120, { suspect: true })];
    const [stage] = explainStep('hot_hold', record(readings), fda).stages;
    expect([stage?.stage.verdict, stage?.without_suspect]).toEqual(['broken', 'kept']);
    expect(explainStep('hot_hold', record(readings.slice(0, 1)), fda).stages[0]?.without_suspect).toBeNull();
  });
  it('a corrected value beside the typed one, the worse of them deciding', () => {
    const [stage] = explainStep('hot_hold', record([look('01:00', 136, { correction: -1.5 })]), fda).stages;
    expect(stage?.pieces[0]?.readings[0]).toMatchObject({ value: 136, corrected: 134.5, side: 'misses' });
  });
});
