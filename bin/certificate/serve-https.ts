import type { RequestListener } from 'node:http';
import { createServer } from 'node:https';
import type { Environment } from './names.ts';
import { type OwnCertificate, ownCertificate } from './own-certificate.ts';

const lookAgainMs = 10 * 60_000; // an address changes when a router is restarted; an end comes once a year

/** The second door, or in words why there is none. */
export type HttpsDoor = { close: () => void } | { refused: string };

type Wanted = {
  file: string;
  port: number;
  host: string;
  env: Environment;
  /** Told of the certificate in use: at the opening, and whenever it was made anew since. */
  inUse: (certificate: OwnCertificate) => void;
};

/** Listens on https with the installation's own certificate, and takes a newer one without a restart. */
export async function openHttps(wanted: Wanted, handle: RequestListener): Promise<HttpsDoor> {
  try {
    const certificate = await ownCertificate(wanted.file, wanted.env);
    const server = createServer({ key: certificate.key, cert: certificate.certificate }, handle);
    await new Promise<void>((done, fail) => {
      server.once('error', fail);
      server.listen(wanted.port, wanted.host, done);
    });
    server.on('error', (cause) => console.error(cause));
    wanted.inUse(certificate);
    const timer = setInterval(() => void renew(server, wanted), lookAgainMs);
    timer.unref();
    const close = (): void => {
      clearInterval(timer);
      server.close();
      server.closeIdleConnections();
    };
    return { close };
  } catch (cause) {
    return { refused: wordsOf(cause, wanted) };
  }
}

async function renew(server: ReturnType<typeof createServer>, { file, env, inUse }: Wanted): Promise<void> {
  try {
    const fresh = await ownCertificate(file, env);
    if (fresh.made === null) return;
    server.setSecureContext({ key: fresh.key, cert: fresh.certificate });
    inUse(fresh);
  } catch (cause) {
    console.error(cause); // the one in use goes on
  }
}

function wordsOf(cause: unknown, { port, file }: Wanted): string {
  const code = (cause as NodeJS.ErrnoException).code;
  if (code === 'EADDRINUSE') return `port ${port} is taken by another program`;
  if (code === 'EACCES' && (cause as NodeJS.ErrnoException).syscall === 'listen')
    return `this user may not listen on port ${port}`;
  if (cause instanceof SyntaxError || (cause as Error).name === 'ZodError')
    return `${file} is no certificate of this program. Move it away: a new one is made, and each phone accepts that one`;
  return cause instanceof Error ? cause.message : String(cause);
}
