import { and, eq } from 'drizzle-orm';
import type { Db } from './connect.ts';
import { signedText } from './schema.ts';
import { sha256 } from './sha256.ts';

/** Stores the text that a signature will cover, under its SHA-256. The same text again changes nothing. */
export async function storeSignedText(db: Db, site: string, text: string): Promise<string> {
  const hash = sha256(text);
  await db.drizzle.insert(signedText).values({ site, hash, text }).onConflictDoNothing();
  return hash;
}

/** The text under a hash; null = none stored. */
export async function signedTextOf(db: Db, site: string, hash: string): Promise<string | null> {
  const [row] = await db.drizzle
    .select({ text: signedText.text })
    .from(signedText)
    .where(and(eq(signedText.site, site), eq(signedText.hash, hash)));
  return row?.text ?? null;
}
