/**
 * The routes of the book in a process of their own, without the pages: what of a server takes entries. Started,
 * killed and started again by api-process.ts. Environment: PORT, and what `openBook` asks for.
 */
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { POST as entries } from '#app/api/entries/route.ts';
import { POST as firstRun } from '#app/api/first-run/route.ts';
import { GET as health } from '#app/api/health/route.ts';

const routes: Record<string, (request: Request) => Promise<Response>> = {
  'POST /api/entries': entries,
  'POST /api/first-run': firstRun,
  'GET /api/health': health,
};

async function bodyOf(request: IncomingMessage): Promise<Uint8Array<ArrayBuffer>> {
  const parts: Buffer[] = [];
  for await (const part of request) parts.push(part as Buffer);
  return new Uint8Array(Buffer.concat(parts));
}

async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
  const { method = 'GET', url = '/' } = request;
  const route = routes[`${method} ${url.split('?')[0]}`];
  const body = await bodyOf(request);
  if (route === undefined) {
    response.writeHead(404).end();
    return;
  }
  const said = await route(
    new Request(`http://${request.headers.host}${url}`, {
      method,
      headers: request.headers as Record<string, string>,
      ...(method === 'GET' ? {} : { body }),
    }),
  );
  const text = await said.text();
  response.writeHead(said.status, {
    'content-type': 'application/json',
    'set-cookie': said.headers.getSetCookie(),
  });
  response.end(text);
}

// The clock of this server can be moved from outside, as a person or a time service does.
const clock = Date.now;
let movedMs = 0;
Date.now = () => clock() + movedMs;
process.on('message', (message: { moveClockMs?: number }) => {
  movedMs += message.moveClockMs ?? 0;
  process.send?.('moved');
});

process.on('disconnect', () => process.exit(0)); // whoever started it is gone
const server = createServer((request, response) => {
  answer(request, response).catch(() => response.destroy()); // a request that was cut off
});
server.listen(Number(process.env.PORT), '127.0.0.1', () => process.send?.('listening'));
