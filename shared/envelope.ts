import canonicalize from 'canonicalize';

/**
 * The bytes of the chain. They are settled for ever: a change here would make every book unreadable to every
 * checker, so there is none. Whoever wants to check a book without this program needs only this page.
 *
 * An entry as it is stored has these members, all of them text but `seq` and `version`, which are whole numbers:
 * site, seq, id, kind, version, at, entered_at, received_at, by, known, device, body, prev, hash.
 * Ids are lower-case UUIDs. Instants are kept as they were written, to the character. `body` is a text: the
 * entry's content as canonical JSON (RFC 8785).
 *
 * 1. `body_sha256` = SHA-256 of the body's UTF-8 bytes, 64 lower-case hexadecimal digits.
 * 2. The envelope = the RFC 8785 JSON of an object with exactly these twelve members (that order is what RFC 8785
 *    makes of them): at, body_sha256, by, device, entered_at, id, kind, known, received_at, seq, site, version.
 *    `known` (how `by` was known) is inside on purpose: who vouched for a name must not be editable later. The body
 *    is inside as its hash only, so that one could be erased at the end of its retention time and the chain still
 *    stands. `prev` is outside: the envelope alone can later be the leaf of a Merkle tree.
 * 3. hash = SHA-256 of the UTF-8 bytes of: the line "holdproof/entry/1", a line feed (0x0A), `prev` (64 digits), a
 *    line feed, the envelope. Nothing after it. 64 lower-case hexadecimal digits.
 * 4. `prev` of an entry is the hash of the entry before it in its site's chain; of the first, 64 zeros. `seq` counts
 *    from 1 without a gap, for each site.
 * 5. At the end of its retention a body may be erased: `body` is then the text "sha256:" and the 64 digits of step 1,
 *    which are taken from there, so the hash and every hash after it stay what they were. No body is written so, for
 *    JSON of an object begins with a brace. Whoever checks also asks that a later entry of the kind `erasure` names
 *    it (shared/entries/erasure.ts); a body without one was taken away by somebody who does not say so.
 */
export type Envelope = {
  site: string;
  seq: number;
  id: string;
  kind: string;
  version: number;
  at: string;
  entered_at: string;
  received_at: string;
  by: string;
  known: string;
  device: string;
};

/** SHA-256 of a text's UTF-8 bytes in lower-case hexadecimal. Given by the caller: a browser and Node have their own. */
export type Sha256 = (text: string) => string;

/** What stands before the hash of a chain's first entry. */
export const chainStart = '0'.repeat(64);

const domain = 'holdproof/entry/1';

const erasedMark = 'sha256:';
const erasedShape = /^sha256:([0-9a-f]{64})$/;

/** Step 5: what stands in the place of a body with this SHA-256. */
export const erasedBody = (bodySha256: string): string => `${erasedMark}${bodySha256}`;

/** Step 5: the SHA-256 of a body that was erased; null = this one was not. */
export const erasedSha256 = (body: string): string | null => erasedShape.exec(body)?.[1] ?? null;

/**
 * RFC 8785 JSON of a value: the one text that it has.
 * @throws Error for what JSON cannot say: NaN, an infinite number, half of a surrogate pair
 */
export function canonicalText(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) throw new TypeError('canonicalText: the value is nothing that JSON can write');
  return text;
}

/** Step 2: the text of the envelope, for a body given as it is stored. */
export function envelopeText(entry: Envelope, body: string, sha256: Sha256): string {
  const { at, by, device, entered_at, id, kind, known, received_at, seq, site, version } = entry;
  const body_sha256 = erasedSha256(body) ?? sha256(body);
  return canonicalText({
    at,
    body_sha256,
    by,
    device,
    entered_at,
    id,
    kind,
    known,
    received_at,
    seq,
    site,
    version,
  });
}

/** Step 3: the entry's hash. */
export const entryHash = (entry: Envelope, body: string, prev: string, sha256: Sha256): string =>
  sha256(`${domain}\n${prev}\n${envelopeText(entry, body, sha256)}`);
