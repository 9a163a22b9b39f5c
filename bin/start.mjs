import { runUnderPinnedNode } from './prepare.mjs';

await runUnderPinnedNode('bin/start.ts', process.argv.slice(2));
