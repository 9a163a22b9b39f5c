import 'reflect-metadata';
import { randomBytes } from 'node:crypto';
import * as x509 from '@peculiar/x509';
import { nameConstraints, nameConstraintsOid, type Permitted } from './name-constraints.ts';
import type { Names } from './names.ts';

/** A key with its certificate, both PEM. */
export type Pair = { key: string; certificate: string };

const dayMs = 86_400_000;
const authorityDays = 3_650;
/** Phones take a server's certificate of a private authority for at most 825 days (from memory); a year is enough. */
const serverDays = 397;
const startsBeforeDays = 1; // a phone whose clock is behind takes it at once
const algorithm = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' };

x509.cryptoProvider.set(crypto);

const newKeys = (): Promise<CryptoKeyPair> => crypto.subtle.generateKey(algorithm, true, ['sign', 'verify']);

/** Positive and 16 bytes long: nobody has to keep a count. */
const serial = (): string => {
  const bytes = randomBytes(16);
  bytes[0] = ((bytes[0] ?? 0) & 0x7f) | 0x40;
  return bytes.toString('hex');
};

const pemOfKey = async (key: CryptoKey): Promise<string> =>
  x509.PemConverter.encode(await crypto.subtle.exportKey('pkcs8', key), 'PRIVATE KEY');

const life = (now: number, days: number) => ({
  notBefore: new Date(now - startsBeforeDays * dayMs),
  notAfter: new Date(now + days * dayMs),
});

/** A new authority, bound to the kitchen's own network and what is permitted beside it. `host` tells it from others. */
export async function newAuthority(permitted: Permitted, host: string, now: number): Promise<Pair> {
  const keys = await newKeys();
  const certificate = await x509.X509CertificateGenerator.createSelfSigned({
    serialNumber: serial(),
    name: [{ CN: [`Holdproof kitchen, ${host || 'own network'}`] }, { O: ['Holdproof'] }],
    ...life(now, authorityDays),
    signingAlgorithm: algorithm,
    keys,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
      new x509.Extension(nameConstraintsOid, true, nameConstraints(permitted)),
    ],
  });
  return { key: await pemOfKey(keys.privateKey), certificate: certificate.toString('pem') };
}

async function signingKey(pem: string): Promise<CryptoKey> {
  const [der] = x509.PemConverter.decode(pem);
  if (der === undefined) throw new Error('signingKey: no key in this PEM');
  return crypto.subtle.importKey('pkcs8', der, algorithm, false, ['sign']);
}

/** A server's certificate for these names, signed by the authority. */
export async function newServer(authority: Pair, names: Names, now: number): Promise<Pair> {
  const issuer = new x509.X509Certificate(authority.certificate);
  const keys = await newKeys();
  const certificate = await x509.X509CertificateGenerator.create({
    serialNumber: serial(),
    subject: [{ CN: ['Holdproof'] }],
    issuer: issuer.subjectName,
    ...life(now, serverDays),
    signingAlgorithm: algorithm,
    publicKey: keys.publicKey,
    signingKey: await signingKey(authority.key),
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension([
        ...names.dns.map((value) => ({ type: 'dns' as const, value })),
        ...names.ip.map((value) => ({ type: 'ip' as const, value })),
      ]),
      await x509.AuthorityKeyIdentifierExtension.create(issuer),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  return { key: await pemOfKey(keys.privateKey), certificate: certificate.toString('pem') };
}
