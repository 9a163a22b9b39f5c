/**
 * A server reduced to its book: takes lines of drafts (JSON) on standard input, appends them, and answers each
 * line with the receipts once they are on disk. Argument: the site.
 */
import { createInterface } from 'node:readline';
import { openBook } from '#db/connect.ts';
import { append } from '#db/ledger.ts';
import { hand } from '../db/drafts.ts';

const [, , site = ''] = process.argv;
const db = await openBook();
process.stdout.write('ready\n');
for await (const line of createInterface({ input: process.stdin })) {
  // Not awaited: many posts are under way at once, as on a server.
  void append(db, { ...hand, site }, JSON.parse(line), Date.now).then((receipts) =>
    process.stdout.write(`${JSON.stringify(receipts)}\n`),
  );
}
