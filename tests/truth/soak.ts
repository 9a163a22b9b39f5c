import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { parseArgs } from 'node:util';
import { findingsOf } from './claims.ts';
import { edition } from './edition.ts';
import { historyOf } from './history.ts';
import { addTold, nothingTold, ours, type Told } from './run.ts';
import { shareLines } from './share.ts';
import { inThreads } from './threads.ts';

/**
 * `npm run soak -- judge [--histories N] [--from SEED] [--state FILE] [--seed SEED]`: ten million histories in two
 * threads. A run that was stopped goes on where it was; the state says how many histories each edition of the judge
 * and of this machine has seen. A finding ends it with status 1.
 */
const { values } = parseArgs({
  options: {
    histories: { type: 'string', default: '10000000' },
    from: { type: 'string', default: '0' },
    state: { type: 'string', default: 'data/soak-judge.json' },
    seed: { type: 'string' },
  },
});
const say = (words: string): void => void process.stderr.write(`${words}\n`);
const size = 5000; // histories a stretch

type State = {
  histories: number;
  from: number;
  done: number[];
  told: Told;
  by: Record<string, number>; // histories, by edition
};

function alone(seed: number): number {
  const history = historyOf(seed);
  const stages = ours(history);
  const findings = findingsOf(history, stages);
  const { kind, record, error, taken } = history;
  const truths = taken.map(({ degF }) => degF);
  const told = { seed, kind, profile: history.profile.id, error, record, truths, stages, findings };
  process.stdout.write(`${JSON.stringify(told, null, 2)}\n`);
  return findings.length > 0 ? 1 : 0;
}

function stateOf(histories: number, from: number): State {
  const fresh: State = { histories, from, done: [], told: nothingTold(), by: {} };
  if (!existsSync(values.state)) return fresh;
  const saved = JSON.parse(readFileSync(values.state, 'utf8')) as State;
  return saved.histories === histories && saved.from === from ? saved : fresh;
}

function save(state: State): void {
  mkdirSync(dirname(values.state), { recursive: true });
  writeFileSync(`${values.state}.new`, JSON.stringify(state));
  renameSync(`${values.state}.new`, values.state);
}

async function soak(): Promise<number> {
  const [histories, from] = [Number(values.histories), Number(values.from)];
  const state = stateOf(histories, from);
  if (state.done.length > 0) say(`Going on after ${state.told.histories} histories.`);
  const here = edition();
  const known = new Set(state.done);
  const stretches = Array.from({ length: Math.ceil(histories / size) }, (_, place) => ({
    from: from + place * size,
    to: Math.min(from + (place + 1) * size, from + histories),
  })).filter((stretch) => !known.has(stretch.from));
  const [started, before] = [Date.now(), state.told.histories];
  let spoken = started;
  await inThreads(stretches, 2, (told, at) => {
    addTold(state.told, told);
    state.done.push(at);
    state.by[here] = (state.by[here] ?? 0) + told.histories;
    for (const { seed, findings } of told.findings)
      say(`FOUND at seed ${seed} (run it alone: --seed ${seed}): ${JSON.stringify(findings)}`);
    if (Date.now() - spoken < 5000) return;
    spoken = Date.now();
    save(state);
    const rate = (1000 * (state.told.histories - before)) / (spoken - started);
    const left = Math.round((histories - state.told.histories) / rate / 60);
    say(`  ${state.told.histories} of ${histories}, ${Math.round(rate)} a second, about ${left} min left`);
  });
  save(state);
  const verdicts = Object.entries(state.told.verdicts).sort(([a], [b]) => a.localeCompare(b));
  const lines = verdicts.map(([name, times]) => `${name.padEnd(44)}${times}`);
  process.stdout.write(`${[...lines, ...shareLines(state.told.shares)].join('\n')}\n`);
  process.stdout.write(`${state.told.histories} histories, ${state.told.findings.length} findings\n`);
  const others = state.told.histories - (state.by[here] ?? 0);
  if (others > 0) process.stdout.write(`${others} of them by another edition of the judge or the machine\n`);
  const seed = state.told.findings[0]?.seed;
  return seed === undefined ? 0 : alone(seed);
}

process.exitCode = values.seed === undefined ? await soak() : alone(Number(values.seed));
