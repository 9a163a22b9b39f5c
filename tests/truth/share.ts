import type { StageName, Stages } from '#lib/judge/answer.ts';
import { minuteOf } from './clock.ts';
import { type History, type Interval, intervals } from './history.ts';
import { type Bounds, truthsOf, worst } from './truths.ts';

/**
 * How much of what was so can be shown. The truth here is of the whole food, read or not, at every moment: so a judge
 * that says nothing has a share of 0, and one look in four hours a small one.
 */
export type Share = { kept: number; keptShown: number; broken: number; brokenShown: number };
export type Shares = Record<string, Share>; // by "kind.stage.interval"

/** Counts what was so of this step, and what the judge could show of it. Exact thermometers only. */
export function count(shares: Shares, history: History, stages: Stages): void {
  const { kind, record, interval } = history;
  if (history.error > 0) return;
  const ended = record.end !== null && record.end <= record.asOf;
  const until = minuteOf(ended && record.end !== null ? record.end : record.asOf);
  const bounds: Bounds = { start: 0, until, ended };
  const truths = truthsOf(history, bounds);
  for (const [name, truthOf] of Object.entries(truths)) {
    const stage = stages[name as StageName];
    if (stage === undefined || stage.verdict === 'not_applicable') continue;
    const truth = worst([...history.groups.values()].map(truthOf));
    if (truth === null) continue;
    const key = `${kind}.${name}.${interval}`;
    shares[key] ??= { kept: 0, keptShown: 0, broken: 0, brokenShown: 0 };
    shares[key][truth]++;
    if (stage.verdict === truth) shares[key][truth === 'kept' ? 'keptShown' : 'brokenShown']++;
  }
}

export function addShares(to: Shares, more: Shares): void {
  for (const [key, one] of Object.entries(more)) {
    const sum = to[key] ?? { kept: 0, keptShown: 0, broken: 0, brokenShown: 0 };
    for (const part of ['kept', 'keptShown', 'broken', 'brokenShown'] as const) sum[part] += one[part];
    to[key] = sum;
  }
}

export const shareOf = (
  shares: Shares,
  rule: string,
  interval: Interval,
  verdict: 'kept' | 'broken',
): number => {
  const one = shares[`${rule}.${interval}`];
  if (one === undefined) return Number.NaN;
  return verdict === 'kept' ? one.keptShown / one.kept : one.brokenShown / one.broken;
};

/** "kind.stage", each once. */
export const rulesIn = (shares: Shares): string[] =>
  [...new Set(Object.keys(shares).map((key) => key.slice(0, key.lastIndexOf('.'))))].sort();

/** One line a rule: of what was kept (and of what was broken) so much is shown when one looks so often. */
export function shareLines(shares: Shares): string[] {
  const percent = (value: number): string => (Number.isNaN(value) ? '–' : `${(100 * value).toFixed(1)} %`);
  const line = (name: string, cells: string[]): string =>
    `${name.padEnd(32)}${cells.map((cell) => cell.padStart(10)).join('')}`;
  const table = (verdict: 'kept' | 'broken'): string[] => [
    line(
      `shown, of what was ${verdict}`,
      intervals.map((every) => `${every} min`),
    ),
    ...rulesIn(shares).map((rule) =>
      line(
        `  ${rule}`,
        intervals.map((every) => percent(shareOf(shares, rule, every, verdict))),
      ),
    ),
  ];
  return [...table('kept'), ...table('broken')];
}
