import { createServer, type RequestListener } from 'node:http';
import next from 'next';
import { dataFolder } from '#db/embedded/place.ts';
import { root } from './build.ts';
import { certificateFile } from './certificate/own-certificate.ts';
import { type HttpsDoor, openHttps } from './certificate/serve-https.ts';
import { entriesDoor } from './entries-door.ts';

/**
 * One Next server in its own process, started by start.ts and restarted by it when it dies. It ends when the
 * starter is gone, so that a killed starter leaves no server behind on the port.
 */
const port = Number(process.env.HOLDPROOF_PORT);
const hostname = process.env.HOLDPROOF_HOST ?? '0.0.0.0';

process.on('disconnect', () => process.exit(0));
const app = next({ dev: false, dir: root, hostname, port, quiet: true });
await app.prepare();
const handle = app.getRequestHandler();
const forTheBook = entriesDoor();
const listener: RequestListener = (request, response) => {
  if (!forTheBook(request, response)) void handle(request, response);
};
const server = createServer(listener);
server.on('error', (cause: NodeJS.ErrnoException) => {
  process.send?.({ refused: cause.code ?? cause.message });
  process.exit(2);
});
const https = await secureDoor();
server.listen(port, hostname, () => process.send?.({ listening: port }));

/** https on its own port, with the installation's certificate. The pages read from the environment where it is. */
async function secureDoor(): Promise<HttpsDoor | null> {
  const securePort = Number(process.env.HOLDPROOF_HTTPS_PORT);
  delete process.env.HOLDPROOF_HTTPS_PORT;
  if (!securePort) return null;
  const door = await openHttps(
    {
      file: certificateFile(dataFolder(process.env)),
      port: securePort,
      host: hostname,
      env: process.env,
      inUse: ({ authority, certificate, fingerprint }) => {
        process.env.HOLDPROOF_HTTPS_PORT = String(securePort);
        process.env.HOLDPROOF_AUTHORITY = authority;
        process.env.HOLDPROOF_CERTIFICATE = certificate;
        process.send?.({ secure: { port: securePort, fingerprint } });
      },
    },
    listener,
  );
  if ('refused' in door) process.send?.({ notSecure: door.refused });
  return door;
}

process.on('SIGTERM', () => {
  if (https !== null && 'close' in https) https.close();
  server.close(() => process.exit(0));
  server.closeIdleConnections();
  setTimeout(() => process.exit(0), 3000).unref();
});
