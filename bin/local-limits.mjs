import { runUnderPinnedNode } from './prepare.mjs';

await runUnderPinnedNode('bin/local-limits.ts', process.argv.slice(2));
