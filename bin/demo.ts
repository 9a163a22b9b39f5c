import { openBook } from '#db/connect.ts';
import { demoSecrets, fillDemo } from '#db/demo/fill.ts';
import { listSites } from '#db/load.ts';
import { BookRefused } from '#db/refused.ts';
import { openingWords, refusalWords } from '#db/words.ts';
import { say } from './say.ts';

/** `demo [--fixed]`: fills an empty installation with the invented night. Exit 0 filled, 1 not empty, 2 refused, 3 use. */
export async function runDemo(args: string[]): Promise<number> {
  const unknown = args.find((arg) => arg !== '--fixed');
  if (unknown) {
    say(`demo: "${unknown}" is not an option. Use: demo [--fixed]`);
    return 3;
  }
  try {
    return await fill(args.includes('--fixed'));
  } catch (cause) {
    if (!(cause instanceof BookRefused)) throw cause;
    for (const line of refusalWords('en', cause)) say(line);
    return 2;
  }
}

async function fill(fixed: boolean): Promise<number> {
  const db = await openBook(process.env, openingWords('en', say));
  try {
    if ((await listSites(db)).length > 0) {
      say('demo: this installation already has a kitchen, and the demo fills only an empty one.');
      say(
        'Give it a folder of its own, for example: HOLDPROOF_DATA=./data-demo npm run -s holdproof -- demo',
      );
      return 1;
    }
    say('Filling the invented night of Lantern Ditch Barbecue …');
    const { entries } = await fillDemo(db, { fixed, now: Date.now() });
    say(
      `${entries} entries are in the book. Everybody's secret is ${demoSecrets.crew}; the manager's is ${demoSecrets.manager}.`,
    );
    return 0;
  } finally {
    await db.close();
  }
}
