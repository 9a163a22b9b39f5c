import { runUnderPinnedNode, say } from './prepare.mjs';

// What can be left running for long: each part is a program of its own among the tests.
const parts = { judge: 'tests/truth/soak.ts', faults: 'tests/faults/soak.ts' };

const [part, ...args] = process.argv.slice(2);
const script = parts[part];
if (script === undefined) {
  say(`npm run soak -- ${Object.keys(parts).join('|')} [options]`);
  process.exit(3);
}
await runUnderPinnedNode(script, args);
