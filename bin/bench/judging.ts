import { judgeStep } from '#lib/judge/judge.ts';
import type { JudgedReading, StepRecord } from '#lib/judge/record.ts';
import { profile } from '#lib/limits/profiles.ts';
import type { Side } from './ratio.ts';

const READINGS = 1000;
const PIECES = 8;
const start = Date.parse('2026-03-07T21:00:00Z');

/** A hold of 1,000 hand readings over eight pieces, all at or above the limit, one look every minute. */
function longHold(): StepRecord {
  const readings: JudgedReading[] = Array.from({ length: READINGS }, (_, i) => ({
    at: start + i * 60_000,
    value: 140 + ((i * 7) % 25),
    unit: 'degF',
    spot: i % 2 === 0 ? 'edge' : 'core',
    piece: (i % PIECES) + 1,
    probe: 'a',
    held_s: null,
    source: 'hand',
    suspect: false,
    correction: null,
  }));
  return {
    food: { class: 'beef_whole', pieces: PIECES },
    facts: {},
    planIntervalMin: 150,
    start,
    end: null,
    asOf: start + READINGS * 60_000,
    readings,
  };
}

/** The other side: one pass over the same records that only compares each value with the limit of its unit. */
function barePass(readings: readonly JudgedReading[], limit: { degF: number; degC: number }): number {
  let below = 0;
  for (const reading of readings) if (reading.value < limit[reading.unit]) below += 1;
  return below;
}

/** Times per call in µs: both sides alternate in one process, many calls a sample, warmed up before. */
export function judging(samples = 60, callsASample = 200): { ours: Side; bare: Side } {
  const fda = profile('fda_2022');
  if (!fda) throw new Error('bench: profile fda_2022 is missing');
  const record = longHold();
  const limit = { degF: 135, degC: 57 };
  let sink = 0;
  const once = {
    ours: () => {
      sink += judgeStep('hot_hold', record, fda).at_readings?.rests_on.length ?? 0;
    },
    bare: () => {
      sink += barePass(record.readings, limit);
    },
  };
  const timed = (call: () => void): number => {
    const from = process.hrtime.bigint();
    for (let i = 0; i < callsASample; i += 1) call();
    return Number(process.hrtime.bigint() - from) / 1000 / callsASample;
  };
  for (let i = 0; i < 20; i += 1) {
    timed(once.ours);
    timed(once.bare);
  }
  const ours: Side = { name: 'judge', values: [] };
  const bare: Side = { name: 'bare pass', values: [] };
  for (let i = 0; i < samples; i += 1) {
    ours.values.push(timed(once.ours));
    bare.values.push(timed(once.bare));
  }
  if (sink < 0) throw new Error('unreachable; keeps the loops from being optimised away');
  return { ours, bare };
}
