import { type CanonicalDay, daySchema } from './day-schema.ts';

/**
 * The day that a stored text says. Its text is `canonicalText` of shared/envelope.ts (RFC 8785): the exact characters
 * (UTF-8) that a signature covers.
 * @returns null when the text is not of this format (another program wrote it, or it was damaged)
 */
export function dayOfText(text: string): CanonicalDay | null {
  try {
    const parsed = daySchema.safeParse(JSON.parse(text));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}
