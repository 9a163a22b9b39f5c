import { createServer } from 'node:http';
import next from 'next';
import { root } from './build.ts';

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
const server = createServer((request, response) => void handle(request, response));
server.on('error', (cause: NodeJS.ErrnoException) => {
  process.send?.({ refused: cause.code ?? cause.message });
  process.exit(2);
});
server.listen(port, hostname, () => process.send?.({ listening: port }));
process.on('SIGTERM', () => {
  server.close(() => process.exit(0));
  server.closeIdleConnections();
  setTimeout(() => process.exit(0), 3000).unref();
});
