import { describe, expect, test } from 'vitest';
import { sha256 } from '#db/sha256.ts';
import { chainStart, entryHash, envelopeText } from '#shared/envelope.ts';

/**
 * Worked out without this program, with Python 3 (hashlib, json):
 *   h = lambda s: hashlib.sha256(s.encode()).hexdigest()
 *   e = json.dumps({…the twelve members…}, sort_keys=True, separators=(',', ':'), ensure_ascii=False)
 *   h('holdproof/entry/1\n' + prev + '\n' + e)
 */
const first = {
  site: '01990000-0000-7000-8000-00000000000a',
  seq: 1,
  id: '01990000-0000-7000-8000-000000000001',
  kind: 'reading',
  version: 1,
  at: '2026-10-17T03:12:00-05:00',
  entered_at: '2026-10-17T03:12:30-05:00',
  received_at: '2026-10-17T08:12:31.250Z',
  by: '01990000-0000-7000-8000-00000000000b',
  known: 'secret',
  device: '01990000-0000-7000-8000-00000000000c',
};
const body = '{"batch":null,"note":"añadido 3 °C","typed":"158.0","value":158}';
const firstHash = '002e66e376e4476cbaf0998f628a9b24a6c56b0917ba4e8baaa3810adc960b57';

describe('the bytes of the chain are those that the page says', () => {
  test('the envelope of an entry, to the character', () => {
    expect(envelopeText(first, body, sha256)).toBe(
      '{"at":"2026-10-17T03:12:00-05:00","body_sha256":"d92dfdfe2a5e86c0fbfda48a59d5e5338b9cd2e8d1e9366a5d1730c1ba28d3c4","by":"01990000-0000-7000-8000-00000000000b","device":"01990000-0000-7000-8000-00000000000c","entered_at":"2026-10-17T03:12:30-05:00","id":"01990000-0000-7000-8000-000000000001","kind":"reading","known":"secret","received_at":"2026-10-17T08:12:31.250Z","seq":1,"site":"01990000-0000-7000-8000-00000000000a","version":1}',
    );
  });

  test('the first entry hangs on 64 zeros, the second on the first', () => {
    expect(entryHash(first, body, chainStart, sha256)).toBe(firstHash);
    const second = {
      ...first,
      seq: 2,
      id: '01990000-0000-7000-8000-000000000002',
      at: '2026-10-17T03:13:00-05:00',
      known: 'tap',
    };
    expect(entryHash(second, '{}', firstHash, sha256)).toBe(
      '8554f4c33ef4aeefd99966668c6d896b625aa3e045e6de3e8d87d311b67f116c',
    );
  });

  test.each(Object.keys(first) as (keyof typeof first)[])('another %s is another hash', (member) => {
    const other = { ...first, [member]: member === 'seq' || member === 'version' ? 9 : 'other' };
    expect(entryHash(other, body, chainStart, sha256)).not.toBe(firstHash);
  });

  test('what else a row holds is not in the hash', () => {
    const row = { ...first, at_ms: 1, subject: 'x', hash: 'y' };
    expect(entryHash(row, body, chainStart, sha256)).toBe(firstHash);
  });
});
