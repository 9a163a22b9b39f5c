import { createHmac, timingSafeEqual } from 'node:crypto';

/**
 * Short codes that let a device in or invite a person: an HMAC over who gives it, for what, and which stretch of
 * time it is. Nothing is stored, so any server of the installation knows any other's codes, and they end by
 * themselves. 50 bits: not to be guessed through a server.
 */
export type CodeFor =
  | { what: 'device'; site: string; by: string }
  | { what: 'person'; site: string; by: string; person: string };

const lifeMs: Readonly<Record<CodeFor['what'], number>> = { device: 10 * 60_000, person: 24 * 3_600_000 };
const letters = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'; // without I, L, O and U: read aloud without a mistake
const length = 10;

function codeIn(key: string, asked: CodeFor, stretch: number): string {
  const person = asked.what === 'person' ? asked.person : '';
  const said = ['holdproof-code-1', asked.what, asked.site, asked.by, person, stretch].join('|');
  const bytes = createHmac('sha256', key).update(said).digest();
  return Array.from({ length }, (_, i) => letters[(bytes[i] ?? 0) % letters.length]).join('');
}

/** The code as it is shown ("7KQ3F-0MTPX") and until when (ms) it is taken: to the end of the next stretch. */
export function codeNow(key: string, asked: CodeFor, now: number): { code: string; until: number } {
  const life = lifeMs[asked.what];
  const stretch = Math.floor(now / life);
  const code = codeIn(key, asked, stretch);
  return { code: `${code.slice(0, 5)}-${code.slice(5)}`, until: (stretch + 2) * life };
}

/** What a person typed, as codes are written: no spaces or dashes, capitals, and the look-alikes put right. */
const plain = (typed: string): string =>
  typed
    .toUpperCase()
    .replace(/[^0-9A-Z]/g, '')
    .replaceAll('O', '0')
    .replace(/[IL]/g, '1');

/** Whether `typed` is the code for this now, or was in the stretch before. */
export function isCode(key: string, asked: CodeFor, typed: string, now: number): boolean {
  const given = Buffer.from(plain(typed));
  const stretch = Math.floor(now / lifeMs[asked.what]);
  return [stretch, stretch - 1].some((each) => {
    const right = Buffer.from(codeIn(key, asked, each));
    return given.length === right.length && timingSafeEqual(given, right);
  });
}
