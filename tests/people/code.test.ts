import { describe, expect, test } from 'vitest';
import { type CodeFor, codeNow, isCode } from '#app/server/code.ts';
import { newSecretProblem } from '#app/server/new-secret.ts';

const key = 'a'.repeat(64);
const device: CodeFor = { what: 'device', site: 's1', by: 'p1' };
const person: CodeFor = { what: 'person', site: 's1', by: 'p1', person: 'p2' };
const minute = 60_000;
const start = 1_000 * 10 * minute; // the first instant of a stretch of ten minutes

describe('a code', () => {
  test('that lets a device in is taken to the end of the next ten minutes, and not a moment longer', () => {
    const { code, until } = codeNow(key, device, start + 3 * minute);
    expect(until).toBe(start + 20 * minute);
    expect(isCode(key, device, code, until - 1)).toBe(true);
    expect(isCode(key, device, code, until)).toBe(false);
    expect(isCode(key, device, code, start - 1)).toBe(false);
  });

  test('is for one site, one giver, one purpose and one person', () => {
    const { code } = codeNow(key, person, start);
    expect(isCode(key, person, code, start)).toBe(true);
    for (const other of [
      device,
      { ...person, site: 's2' },
      { ...person, by: 'p3' },
      { ...person, person: 'p4' },
    ]) {
      expect(isCode(key, other, code, start)).toBe(false);
    }
    expect(isCode('b'.repeat(64), person, code, start)).toBe(false);
  });

  test('is read as people write it: small letters, spaces, O for 0, I and L for 1', () => {
    for (let n = 0; n < 200; n += 1) {
      const { code } = codeNow(key, { ...device, by: `p${n}` }, start);
      expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{5}-[0-9A-HJKMNP-TV-Z]{5}$/);
      const written = ` ${code.toLowerCase().replace('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l')} `;
      expect(isCode(key, { ...device, by: `p${n}` }, written, start)).toBe(true);
    }
  });

  test.each(['', '-----', 'A', 'AAAAA-AAAAA-A'])('"%s" is none', (typed) => {
    expect(isCode(key, device, typed, start)).toBe(false);
  });
});

describe('a new secret', () => {
  test.each([
    ['crew', '73916', 'secret_too_short'],
    ['crew', '739164', null],
    ['lead', '739164', null],
    ['manager', '7391645', 'secret_too_short'],
    ['manager', '73916450', null],
    ['owner', 'wet hickory', null],
    ['crew', '111111', 'secret_too_plain'],
    ['crew', '123456', 'secret_too_plain'],
    ['crew', '987654', 'secret_too_plain'],
    ['owner', 'abcdefgh', 'secret_too_plain'],
    ['crew', '123457', null],
  ] as const)('of %s, "%s": %s', (role, secret, problem) => {
    expect(newSecretProblem(role, secret)?.problem ?? null).toBe(problem);
  });
});
