import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { get } from 'node:https';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type OwnCertificate, ownCertificate } from '#bin/certificate/own-certificate.ts';
import { openHttps } from '#bin/certificate/serve-https.ts';
import { freePort } from '#bin/kitchen-server.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'holdproof-https-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const asked = (port: number, ca: string): Promise<string> =>
  new Promise((done, fail) => {
    get({ host: '127.0.0.1', port, ca, agent: false }, (response) =>
      response.on('data', (words: Buffer) => done(words.toString())),
    ).on('error', fail);
  });

describe('the second door', () => {
  test('answers over https by the same handler, with the certificate that it names', async () => {
    const port = await freePort();
    const seen: OwnCertificate[] = [];
    const door = await openHttps(
      {
        file: join(folder, 'one', 'https.json'),
        port,
        host: '127.0.0.1',
        env: {},
        inUse: (c) => seen.push(c),
      },
      (request, response) => response.end(`asked for ${request.url}`),
    );
    expect(seen).toHaveLength(1);
    expect(await asked(port, seen[0]?.authority ?? '')).toBe('asked for /');
    if ('close' in door) door.close();
  });

  test('a port that is taken is said in words, and stops nothing else', async () => {
    const other = createServer();
    await new Promise<void>((done) => other.listen(0, '127.0.0.1', done));
    const { port } = other.address() as AddressInfo;
    const file = join(folder, 'two', 'https.json');
    const door = await openHttps({ file, port, host: '127.0.0.1', env: {}, inUse: () => {} }, () => {});
    expect(door).toEqual({ refused: `port ${port} is taken by another program` });
    other.close();
  });

  test('a file that is none of ours is named, with what to do', async () => {
    const file = join(folder, 'three', 'https.json');
    await ownCertificate(file, {});
    writeFileSync(file, 'scratch');
    const door = await openHttps(
      { file, port: await freePort(), host: '127.0.0.1', env: {}, inUse: () => {} },
      () => {},
    );
    expect('refused' in door && door.refused).toContain(
      `${file} is no certificate of this program. Move it away`,
    );
  });
});
