import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';

/** What a soak rests on: the judge, the limits, and the machine that checks them. */
const rooms = ['../../lib/judge/', '../../lib/limits/', '../../shared/', './'];

/** A short mark of the source of all of it: with one line changed it is another edition. */
export function edition(): string {
  const hash = createHash('sha256');
  for (const room of rooms) {
    const at = new URL(room, import.meta.url);
    const names = readdirSync(at, { recursive: true, encoding: 'utf8' });
    for (const name of names.filter((one) => one.endsWith('.ts')).sort())
      hash.update(name).update(readFileSync(new URL(name, at)));
  }
  return hash.digest('hex').slice(0, 12);
}
