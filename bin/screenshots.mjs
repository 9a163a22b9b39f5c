import { runUnderPinnedNode } from './prepare.mjs';

await runUnderPinnedNode('bin/screenshots.ts', process.argv.slice(2));
