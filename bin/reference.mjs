import { runUnderPinnedNode } from './prepare.mjs';

await runUnderPinnedNode('bin/reference.ts', process.argv.slice(2));
