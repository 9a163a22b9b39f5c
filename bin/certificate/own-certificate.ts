import { X509Certificate } from 'node:crypto';
import {
  chmodSync,
  existsSync,
  linkSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { z } from 'zod';
import { newAuthority, newServer } from './issue.ts';
import { type Permitted, permitsAddress, permitsDns } from './name-constraints.ts';
import { type Environment, type Names, namesAsked, namesNow, ownName } from './names.ts';

const names = z.object({ dns: z.array(z.string()), ip: z.array(z.string()) });
const kept = z.object({
  authority: z.object({ key: z.string(), certificate: z.string(), permitted: names }),
  server: z.object({ key: z.string(), certificate: z.string(), names }),
});
type Kept = z.infer<typeof kept>;

/** What this installation shows phones: its own authority, and a certificate for each of its names. All PEM. */
export type OwnCertificate = {
  authority: string; // the certificate that a phone accepts; its key stays in the file
  key: string;
  certificate: string;
  fingerprint: string; // SHA-256 of the authority, "AB:CD:…": what a phone shows to compare
  until: number; // ms, the end of the server's certificate
  /** What was made anew by this call. A new authority has to be accepted again by each phone. */
  made: 'authority' | 'server' | null;
};

const dayMs = 86_400_000;
const renewBeforeMs = 60 * dayMs;

export const certificateFile = (dataFolder: string): string => join(dataFolder, 'https', 'certificate.json');

/**
 * The installation's certificate: read from the file, made when there is none, and renewed two months before it
 * ends or when a name or an address is not in it. The authority stays, so phones notice nothing, unless the owner
 * names something that it was not bound to, or its ten years end.
 *
 * @throws Error when the file cannot be read or is none of ours: nothing is written over
 */
export async function ownCertificate(
  file: string,
  env: Environment,
  now: number = Date.now(),
): Promise<OwnCertificate> {
  const before = read(file);
  const asked = namesAsked(env);
  const old = before !== null && authorityServes(before, asked, now) ? before.authority : null;
  const authority = old ?? (await freshAuthority(asked, now));
  const wanted = permittedOf(namesNow(env), authority.permitted);
  if (before !== null && old !== null && serverServes(before, wanted, now)) return shown(before, null);
  const server = { ...(await newServer(authority, wanted, now)), names: wanted };
  const made = { authority, server };
  const standing = write(file, made, before === null);
  return standing === made ? shown(made, old === null ? 'authority' : 'server') : shown(standing, null);
}

const endOf = (pem: string): number => Date.parse(new X509Certificate(pem).validTo);

const authorityServes = ({ authority }: Kept, asked: Names, now: number): boolean =>
  endOf(authority.certificate) - now > 400 * dayMs && // it outlives every certificate that it signs
  asked.dns.every((name) => permitsDns(authority.permitted, name)) &&
  asked.ip.every((address) => permitsAddress(authority.permitted, address));

const serverServes = ({ server }: Kept, wanted: Names, now: number): boolean =>
  endOf(server.certificate) - now > renewBeforeMs &&
  wanted.dns.every((name) => server.names.dns.includes(name)) &&
  wanted.ip.every((address) => server.names.ip.includes(address));

async function freshAuthority(asked: Names, now: number): Promise<Kept['authority']> {
  const host = ownName();
  const permitted: Permitted = { dns: [...new Set([...(host ? [host] : []), ...asked.dns])], ip: asked.ip };
  return { ...(await newAuthority(permitted, host, now)), permitted };
}

const permittedOf = (all: Names, permitted: Permitted): Names => ({
  dns: all.dns.filter((name) => permitsDns(permitted, name)),
  ip: all.ip.filter((address) => permitsAddress(permitted, address)),
});

const shown = ({ authority, server }: Kept, made: OwnCertificate['made']): OwnCertificate => ({
  authority: authority.certificate,
  key: server.key,
  certificate: server.certificate,
  fingerprint: new X509Certificate(authority.certificate).fingerprint256,
  until: endOf(server.certificate),
  made,
});

function read(file: string): Kept | null {
  if (!existsSync(file)) return null;
  return kept.parse(JSON.parse(readFileSync(file, 'utf8')));
}

/** Whole or not at all, readable by its owner only. Of two first ones the one that was there first stands. */
function write(file: string, made: Kept, first: boolean): Kept {
  mkdirSync(dirname(dirname(file)), { recursive: true }); // the data folder: others may have to pass through it
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  const fresh = `${file}.${process.pid}.new`;
  writeFileSync(fresh, `${JSON.stringify(made, null, 2)}\n`, { mode: 0o600 });
  chmodSync(fresh, 0o600); // whatever the umask is
  if (!first) {
    renameSync(fresh, file);
    return made;
  }
  try {
    linkSync(fresh, file);
    return made;
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code !== 'EEXIST') throw cause;
    return read(file) ?? made;
  } finally {
    rmSync(fresh, { force: true });
  }
}
