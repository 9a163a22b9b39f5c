import { type Db, openBook } from '#db/connect.ts';
import { BookRefused } from '#db/refused.ts';
import { openingWords, refusalWords } from '#db/words.ts';
import type { Language } from '#shared/words/messages.ts';
import type { Io } from './io.ts';

/** The language of a command: English unless the terminal's is Spanish. */
export const languageOf = (env: NodeJS.ProcessEnv): Language =>
  /^es([_.-]|$)/.test(env.LC_ALL || env.LC_MESSAGES || env.LANG || '') ? 'es' : 'en';

/** Opens the book for one command and closes it after. A refusal is said in words; its status is 3. */
export async function withBook(io: Io, work: (db: Db) => Promise<number>): Promise<number> {
  const language = languageOf(io.env);
  let db: Db;
  try {
    db = await openBook(io.env, openingWords(language, io.err));
  } catch (error) {
    if (!(error instanceof BookRefused)) throw error;
    for (const line of refusalWords(language, error)) io.err(line);
    return 3;
  }
  try {
    return await work(db);
  } finally {
    await db.close();
  }
}
