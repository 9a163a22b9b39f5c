import { X509Certificate } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer, get } from 'node:https';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { newAuthority, newServer } from '#bin/certificate/issue.ts';
import { addressBytes, isOwnAddress, maskBytes, namesAsked } from '#bin/certificate/names.ts';
import { certificateFile, ownCertificate } from '#bin/certificate/own-certificate.ts';

const dayMs = 86_400_000;
const now = Date.now();
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'holdproof-certificate-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let made = 0;
/** A data folder of its own. */
const fresh = (): string => {
  made += 1;
  return certificateFile(join(folder, `data-${made}`));
};

/** Node has no code of its own for a name outside the bounds of its authority: then OpenSSL's words. */
const named = ({ code, message }: NodeJS.ErrnoException): string =>
  code === undefined || code === 'UNSPECIFIED' ? message : code;

type Shown = { key: string; certificate: string };

/** What a client that trusts `authority` alone meets when it asks this server by `name`: "in", or why it turned away. */
async function meet(server: Shown, authority: string, name: string): Promise<string> {
  const door = createServer({ key: server.key, cert: server.certificate }, (_, response) => {
    response.end('in');
  });
  await new Promise<void>((done) => door.listen(0, '127.0.0.1', done));
  const { port } = door.address() as AddressInfo;
  const address = /^[\d.]+$/.test(name);
  try {
    return await new Promise<string>((done) => {
      get(
        {
          host: '127.0.0.1',
          port,
          ca: authority,
          agent: false,
          ...(address ? {} : { servername: name, headers: { host: name } }),
        },
        (response) => response.on('data', (words: Buffer) => done(words.toString())),
      ).on('error', (cause: NodeJS.ErrnoException) => done(named(cause)));
    });
  } finally {
    door.close();
  }
}

describe('the installation’s own certificate', () => {
  test('a client that accepted the authority is let in by name and by address, and by no other name', async () => {
    const own = await ownCertificate(fresh(), { HOLDPROOF_NAMES: 'pit.test' });
    expect(await meet(own, own.authority, 'pit.test')).toBe('in');
    expect(await meet(own, own.authority, 'localhost')).toBe('in');
    expect(await meet(own, own.authority, '127.0.0.1')).toBe('in');
    expect(await meet(own, own.authority, 'other.test')).toBe('ERR_TLS_CERT_ALTNAME_INVALID');
  });

  test('a client that accepted another kitchen’s authority turns away', async () => {
    const own = await ownCertificate(fresh(), {});
    const other = await ownCertificate(fresh(), {});
    expect(await meet(own, other.authority, 'localhost')).toMatch(
      /UNABLE_TO_VERIFY_LEAF_SIGNATURE|CERT_SIGNATURE_FAILURE/,
    );
  });

  test('whoever steals the authority’s key can vouch for no name outside the kitchen’s network', async () => {
    const stolen = await newAuthority({ dns: ['pit.test'], ip: [] }, 'pit', now);
    const bank = await newServer(stolen, { dns: ['bank.example'], ip: [] }, now);
    expect(await meet(bank, stolen.certificate, 'bank.example')).toBe('permitted subtree violation');
    const outside = await newServer(stolen, { dns: ['pit.test'], ip: ['203.0.113.7'] }, now);
    expect(await meet(outside, stolen.certificate, 'pit.test')).toBe('permitted subtree violation');
    const inside = await newServer(stolen, { dns: ['pit.test'], ip: ['192.168.1.20', 'fe80::1'] }, now);
    expect(await meet(inside, stolen.certificate, 'pit.test')).toBe('in');
  });

  test('its file is readable by its owner alone, and a second start finds the same', async () => {
    const file = fresh();
    const first = await ownCertificate(file, {});
    expect(first.made).toBe('authority');
    expect(statSync(file).mode & 0o777).toBe(0o600);
    const second = await ownCertificate(file, {});
    expect(second.made).toBeNull();
    expect(second.certificate).toBe(first.certificate);
  });

  test('two servers that start at once on an empty folder show one and the same', async () => {
    const file = fresh();
    const [one, two] = await Promise.all([ownCertificate(file, {}), ownCertificate(file, {})]);
    expect(one.certificate).toBe(two.certificate);
    expect(one.fingerprint).toBe(two.fingerprint);
  });

  test('it lasts no longer than 825 days, and is renewed before its end under the same authority', async () => {
    const file = fresh();
    const first = await ownCertificate(file, {}, now);
    const { validFrom, validTo } = new X509Certificate(first.certificate);
    expect((Date.parse(validTo) - Date.parse(validFrom)) / dayMs).toBeLessThanOrEqual(825);
    expect((await ownCertificate(file, {}, first.until - 61 * dayMs)).made).toBeNull();
    const renewed = await ownCertificate(file, {}, first.until - 59 * dayMs);
    expect(renewed.made).toBe('server');
    expect(renewed.fingerprint).toBe(first.fingerprint);
    expect(renewed.until).toBeGreaterThan(first.until);
  });

  test('an address that came since is taken in under the same authority', async () => {
    const file = fresh();
    const first = await ownCertificate(file, {});
    const moved = await ownCertificate(file, { HOLDPROOF_NAMES: '192.168.77.5 smoker.local' });
    expect(moved.made).toBe('server');
    expect(moved.fingerprint).toBe(first.fingerprint);
    expect(new X509Certificate(moved.certificate).checkIP('192.168.77.5')).toBe('192.168.77.5');
    expect(await meet(moved, first.authority, 'smoker.local')).toBe('in');
  });

  test('a name that the authority is not bound to makes a new authority, and says so', async () => {
    const file = fresh();
    const first = await ownCertificate(file, {});
    const named = await ownCertificate(file, { HOLDPROOF_NAMES: 'pit.example' });
    expect(named.made).toBe('authority');
    expect(named.fingerprint).not.toBe(first.fingerprint);
    expect(await meet(named, named.authority, 'pit.example')).toBe('in');
  });

  test('a file that is none of ours is refused and left as it is', async () => {
    const file = fresh();
    await ownCertificate(file, {});
    writeFileSync(file, '{"authority": 3}');
    await expect(ownCertificate(file, {})).rejects.toThrow();
    expect(readFileSync(file, 'utf8')).toBe('{"authority": 3}');
  });
});

describe('names and addresses', () => {
  test.each([
    ['10.255.255.255', true],
    ['11.0.0.0', false],
    ['172.15.255.255', false],
    ['172.16.0.1', true],
    ['172.31.255.255', true],
    ['172.32.0.0', false],
    ['192.168.0.1', true],
    ['100.63.255.255', false],
    ['100.64.0.1', true],
    ['203.0.113.7', false],
    ['fd00::1', true],
    ['fe80::1', true],
    ['2001:db8::1', false],
  ])('%s belongs to a network of one’s own: %s', (address, own) => {
    expect(isOwnAddress(address)).toBe(own);
  });

  test('bytes of addresses and masks', () => {
    expect(addressBytes('fe80::1:2')).toEqual([0xfe, 0x80, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0, 2]);
    expect(addressBytes('::1')).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1]);
    expect(maskBytes(12, 4)).toEqual([255, 240, 0, 0]);
    expect(maskBytes(10, 4)).toEqual([255, 192, 0, 0]);
  });

  test('what is neither name nor address is said, not left out', () => {
    expect(namesAsked({ HOLDPROOF_NAMES: 'Pit.Example, 192.168.1.9' })).toEqual({
      dns: ['pit.example'],
      ip: ['192.168.1.9'],
    });
    expect(() => namesAsked({ HOLDPROOF_NAMES: 'https://pit.example/' })).toThrow('https://pit.example/');
  });
});
