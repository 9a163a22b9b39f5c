import { runUnderPinnedNode } from './prepare.mjs';

await runUnderPinnedNode('bin/bench.ts', process.argv.slice(2));
