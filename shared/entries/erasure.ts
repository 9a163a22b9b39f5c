import * as z from 'zod';
import { localDate } from '../time.ts';
import { entryKind } from './kind.ts';
import { sha256Hex } from './signature.ts';

/** Entries a to b of the chain, both included. */
const range = z.tuple([z.int().min(1), z.int().min(1)]);

/**
 * At the end of retention the bodies of these entries gave way to their SHA-256 (shared/envelope.ts, step 5): which,
 * how many, and one digest of what went. `digest` is the SHA-256 of one line for each of them in their order: number,
 * hash, SHA-256 of the body, with a space between them and a line feed (0x0A) after each.
 * `sheets`: the signed days whose stored text went with them, each under its SHA-256, so that a sheet which somebody
 * kept can still be told from another.
 */
export const erasure = entryKind({
  kind: 'erasure',
  version: 1,
  body: z.strictObject({
    before: localDate, // the first operating day of which nothing was erased
    kept_years: z.int().min(1).max(200), // how long this kitchen kept its records when it was done
    from: localDate, // the operating days of the first and the last of them
    to: localDate,
    ranges: z.array(range).min(1).max(50_000), // in order, apart from each other
    count: z.int().min(1),
    bytes: z.int().min(0), // of the bodies, in UTF-8
    digest: sha256Hex,
    sheets: z.array(z.strictObject({ day: localDate, hash: sha256Hex })).max(50_000),
  }),
  words: 'entry.erasure',
});

/** Whether an entry's number lies in one of the ranges. */
export const covers = (ranges: readonly (readonly [number, number])[], seq: number): boolean =>
  ranges.some(([from, to]) => from <= seq && seq <= to);
