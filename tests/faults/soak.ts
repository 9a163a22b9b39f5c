/**
 * `npm run soak -- faults [--rounds N] [--away SECONDS] [--seed SEED]`: the suite of faults in its whole form, 200
 * kills and a database that is away for a minute. A seed gives the same moments again.
 */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { parseArgs } from 'node:util';

const { values } = parseArgs({
  options: {
    rounds: { type: 'string', default: '200' },
    away: { type: 'string', default: '60' },
    seed: { type: 'string', default: String(Math.floor(Date.now() / 1000)) },
  },
});
const root = join(import.meta.dirname, '../..');
const vitest = join(root, 'node_modules/vitest/vitest.mjs');
process.stderr.write(`Faults: ${values.rounds} kills, seed ${values.seed}; each test is named as it ends.\n`);
const child = spawn(
  process.execPath,
  [vitest, 'run', 'tests/faults', '--reporter=verbose', '--no-file-parallelism'],
  {
    cwd: root,
    stdio: 'inherit',
    env: {
      ...process.env,
      HOLDPROOF_FAULT_ROUNDS: values.rounds,
      HOLDPROOF_FAULT_AWAY_S: values.away,
      HOLDPROOF_FAULT_SEED: values.seed,
    },
  },
);
child.on('exit', (code) => process.exit(code ?? 1));
