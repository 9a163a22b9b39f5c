import { runUnderPinnedNode } from './prepare.mjs';

await runUnderPinnedNode('bin/holdproof.ts', process.argv.slice(2));
