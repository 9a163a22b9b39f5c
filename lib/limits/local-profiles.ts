// Written by npm run local-limits from the files of lib/limits/local; do not edit.

export const local: readonly unknown[] = [];
