import { runUnderPinnedNode } from './prepare.mjs';

await runUnderPinnedNode('bin/demands.ts', process.argv.slice(2));
