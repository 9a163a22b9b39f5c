import { request as ask, createServer } from 'node:http';

/** A server before the kitchen’s that shows its worker as a newer edition, and can keep entries or a kept file back. */
export type Editions = {
  url: string;
  /** From now on the worker's file is another one. */
  next: () => void;
  /** Entries sent from now on find no answer (`false`), or find one again. */
  entries: (pass: boolean) => void;
  /** Of the files that a worker keeps, one finds no answer (`false`), or finds one again. */
  whole: (pass: boolean) => void;
  close: () => Promise<void>;
};

const worker = '/serwist/sw.js';
const kept = '/away';

/** @param to port of the kitchen's server on this machine */
export async function openEditions(to: number): Promise<Editions> {
  let edition = 1;
  let open = true;
  let whole = true;
  const server = createServer((request, response) => {
    const isShut =
      (!open && request.url?.startsWith('/api/entries')) || (!whole && request.url?.startsWith(kept));
    if (isShut) {
      request.socket.destroy();
      return;
    }
    const headers = { ...request.headers };
    if (request.url === worker) delete headers['accept-encoding'];
    const asked = ask(
      { host: '127.0.0.1', port: to, path: request.url, method: request.method, headers },
      (answer) => {
        const { 'content-length': length, ...rest } = answer.headers;
        const changed = request.url === worker && edition > 1;
        response.writeHead(answer.statusCode ?? 502, changed || length === undefined ? rest : answer.headers);
        if (!changed) return void answer.pipe(response);
        answer.on('data', (part: Buffer) => response.write(part));
        answer.on('end', () => response.end(`\n// edition ${edition}\n`));
      },
    );
    asked.on('error', () => response.destroy());
    request.pipe(asked);
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  if (typeof address !== 'object' || address === null) throw new Error('openEditions: no port');
  return {
    url: `http://127.0.0.1:${address.port}`,
    next: () => {
      edition += 1;
    },
    entries: (pass) => {
      open = pass;
    },
    whole: (pass) => {
      whole = pass;
    },
    close: () => {
      server.closeAllConnections();
      return new Promise((done) => server.close(() => done()));
    },
  };
}
