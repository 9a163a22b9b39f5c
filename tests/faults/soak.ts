/**
 * `npm run soak -- faults [--rounds N] [--away SECONDS] [--seed SEED] [--state FILE]`: the suite of faults in its
 * whole form, 200 kills and a database that is away for a minute. It goes in parts, a suite or ten kills each; a run
 * that was stopped goes on after the last whole part. A seed gives the same moments again. A part that found
 * something does not stop those after it; it ends the whole with status 1.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { buildIfChanged } from '#bin/build.ts';
import { killsAtOnce, partsOf, runPart } from './soak-parts.ts';
import { saveState, stateOf } from './soak-state.ts';

const { values } = parseArgs({
  options: {
    rounds: { type: 'string', default: '200' },
    away: { type: 'string', default: '60' },
    seed: { type: 'string' },
    state: { type: 'string', default: 'data/soak-faults.json' },
  },
});
const say = (words: string): void => void process.stderr.write(`${words}\n`);
const minutes = (ms: number): string => `${Math.round(ms / 60_000)} min`;

const asked = { rounds: Number(values.rounds), awayS: Number(values.away), seed: values.seed ?? null };
const suites = readdirSync(import.meta.dirname).filter((name) => name.endsWith('.test.ts'));
const parts = partsOf(suites, asked.rounds);
const state = stateOf(values.state, asked, parts.length);
const before = Object.keys(state.done).length;
say(
  `Faults: ${asked.rounds} kills, ${killsAtOnce} a book, seed ${state.seed}, kept in ${join(process.cwd(), values.state)}.`,
);
if (before > 0) say(`Going on after ${before} of ${parts.length} parts.`);

await buildIfChanged(); // a whole server is killed too: its pages are not part of what is tried

const started = Date.now();
const left = parts.filter(({ name }) => state.done[name] === undefined);
for (const [n, part] of left.entries()) {
  const found = await runPart(part, state);
  if (found === 'stopped') process.exit(1); // it is asked again when the soak goes on
  state.done[part.name] = found;
  saveState(values.state, state);
  const gone = Date.now() - started;
  const rest = (gone / (n + 1)) * (left.length - n - 1);
  say(
    `  ${part.name}: ${found === null ? 'nothing found' : 'FOUND SOMETHING'}; ${before + n + 1} of ${parts.length} parts, ${minutes(gone)} gone, about ${minutes(rest)} left`,
  );
}
const findings = Object.entries(state.done).filter(([, found]) => found !== null);
for (const [name, found] of findings) say(`\nFound in ${name}:\n${found}`);
process.stdout.write(`${asked.rounds} kills, ${parts.length} parts, ${findings.length} findings\n`);
process.exitCode = findings.length > 0 ? 1 : 0;
