import { X509Certificate } from 'node:crypto';
import { isIP } from 'node:net';
import { addressesOf } from './addresses.ts';

/** The ways to a sealed address: the owner's own, and this server's second port with its own certificate. */
export type SecureWays = {
  /** The owner's proxy or tunnel (HOLDPROOF_ADDRESS), whose certificate phones know already; null = none named. */
  named: string | null;
  /** null = the server was started without https. The fingerprint (SHA-256) is the one that the terminal shows. */
  own: { addresses: string[]; fingerprint: string } | null;
};

/** What the owner named as this kitchen's address; null for none, or for one that is not https. */
export function namedAddress(): string | null {
  const typed = process.env.HOLDPROOF_ADDRESS ?? '';
  return URL.canParse(typed) && new URL(typed).protocol === 'https:' ? new URL(typed).origin : null;
}

/** The certificate (PEM) of the authority that a phone accepts; null = the server has no https of its own. */
export const authority = (): string | null => process.env.HOLDPROOF_AUTHORITY || null;

/**
 * @param host as the asking browser sent it: the name under which it came is the first, where the certificate
 *   has it
 */
export function secureWays(host: string | null): SecureWays {
  const certificate = authority();
  const port = process.env.HOLDPROOF_HTTPS_PORT ?? '';
  if (certificate === null || port === '') return { named: namedAddress(), own: null };
  const server = new X509Certificate(process.env.HOLDPROOF_CERTIFICATE || certificate);
  const found = addressesOf({ host, https: false }).map((address) => new URL(address).hostname);
  const named = found.filter((name) => (isIP(name) ? server.checkIP(name) : server.checkHost(name)));
  const hosts = named.length > 0 ? named : ['localhost'];
  return {
    named: namedAddress(),
    own: {
      addresses: [...new Set(hosts.map((name) => new URL(`https://${name}:${port}`).origin))],
      fingerprint: new X509Certificate(certificate).fingerprint256,
    },
  };
}
