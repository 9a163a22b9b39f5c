import * as z from 'zod';

/**
 * One kind of entry: what its body is, in which version, and the message that says it in words.
 * A body never changes shape under its version: a new shape is a new version with a pure function from the old
 * one, and a stored sample of each in tests/entries.
 */
export type EntryKind<K extends string, B extends z.ZodType> = {
  readonly kind: K;
  readonly version: number;
  readonly body: B;
  /** Key of the ICU message (shared/words/<language>/entry.json) that says the entry in one line. */
  readonly words: string;
};

export const entryKind = <K extends string, B extends z.ZodType>(kind: EntryKind<K, B>): EntryKind<K, B> =>
  kind;

/** Words that a person wrote: kept as written, with the language they were written in. */
export const words = z.string().trim().max(2000);
export const shortWords = z.string().trim().min(1).max(200);
export const language = z.enum(['en', 'es']);
/** Numbers of pieces or pans, 1 to 999; null = all that the batch has and that are not gone. */
export const pieces = z.array(z.int().min(1).max(999)).min(1).max(999).nullable();
/** What was typed, beside the number it means: "158.0" stays "158.0". */
export const typed = z.string().trim().min(1).max(12);
