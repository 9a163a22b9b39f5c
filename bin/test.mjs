import { runUnderPinnedNode } from './prepare.mjs';

await runUnderPinnedNode('bin/test.ts', process.argv.slice(2));
