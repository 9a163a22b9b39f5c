import type { Stages } from '#lib/judge/answer.ts';
import { judgeStep } from '#lib/judge/judge.ts';
import type { RuleKind } from '#lib/judge/record.ts';
import { stageEntries } from '#lib/judge/stage.ts';
import type { Finding } from './claim.ts';
import { findingsOf } from './claims.ts';
import { type History, historyOf, kindOf } from './history.ts';
import { addShares, count, type Shares } from './share.ts';

/** What came of a stretch of seeds. Data only, for it goes from one thread to another and into a file. */
export type Told = {
  histories: number;
  verdicts: Record<string, number>; // by "kind.stage.verdict"
  shares: Shares;
  findings: { seed: number; findings: Finding[] }[];
};

export const nothingTold = (): Told => ({ histories: 0, verdicts: {}, shares: {}, findings: [] });

export function addTold(to: Told, more: Told): void {
  to.histories += more.histories;
  for (const [key, value] of Object.entries(more.verdicts))
    to.verdicts[key] = (to.verdicts[key] ?? 0) + value;
  addShares(to.shares, more.shares);
  to.findings.push(...more.findings);
}

/** How a history is judged; a test that wants to see the machine fail gives a judge with a fault. */
export type Judge = (history: History) => Stages;
export const ours: Judge = ({ kind, record, profile }) => judgeStep(kind, record, profile);

/** Makes, judges and checks the histories of the seeds from `from` to `to` (not included); `only` of some kinds. */
export function run(
  from: number,
  to: number,
  judge: Judge = ours,
  mostFindings = 20,
  only: readonly RuleKind[] | null = null,
): Told {
  const told = nothingTold();
  for (let seed = from; seed < to && told.findings.length < mostFindings; seed++) {
    if (only !== null && !only.includes(kindOf(seed))) continue;
    const history = historyOf(seed);
    const stages = judge(history);
    told.histories++;
    for (const [name, { verdict }] of stageEntries(stages)) {
      const key = `${history.kind}.${name}.${verdict}`;
      told.verdicts[key] = (told.verdicts[key] ?? 0) + 1;
    }
    const findings = findingsOf(history, stages);
    if (findings.length > 0) told.findings.push({ seed, findings });
    count(told.shares, history, stages);
  }
  return told;
}
