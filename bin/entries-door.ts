import type { IncomingMessage, ServerResponse } from 'node:http';
import { registerHooks } from 'node:module';
import { join } from 'node:path';
import type { TLSSocket } from 'node:tls';
import { root } from './build.ts';

type Route = (request: Request) => Promise<Response>;

/** Answers a request when it is one for the book; false = it is somebody else's. */
export type EntriesDoor = (request: IncomingMessage, response: ServerResponse) => boolean;

const mostBytes = 1024 * 1024; // one byte more is read, so that the route says that it is too much

/**
 * The way of `POST /api/entries` past the page server: the same route, run as it stands, without the page server's
 * own work on each request, which costs as much as writing the entry. Until the route is loaded the page server
 * answers, and says the same.
 */
export function entriesDoor(): EntriesDoor {
  let route: Route | null = null;
  loaded().then(
    (post) => {
      route = post;
    },
    (cause: unknown) =>
      console.error('The short way for entries is not open; the page server takes them.', cause),
  );
  return (request, response) => {
    if (route === null || request.method !== 'POST') return false;
    if (request.url?.split('?')[0] !== '/api/entries') return false;
    answer(route, request, response).catch(() => response.destroy()); // a request that was cut off
    return true;
  };
}

/** The route outside a bundle: what only a bundler resolves is named as plain Node finds it. */
async function loaded(): Promise<Route> {
  const hooks = registerHooks({
    resolve: (specifier, context, next) => {
      if (specifier === 'server-only') return { url: 'data:text/javascript,', shortCircuit: true };
      const ofNext = /^next\/(server|headers|navigation)$/.test(specifier);
      return next(ofNext ? `${specifier}.js` : specifier, context);
    },
  });
  try {
    const module: { POST: Route } = await import(join(root, 'app/api/entries/route.ts')); // by its place, as Next does
    return module.POST;
  } finally {
    hooks.deregister();
  }
}

async function answer(route: Route, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const body = await bodyOf(request);
  const said = await route(requestOf(request, body));
  const text = await said.text();
  const cookies = said.headers.getSetCookie();
  response.writeHead(said.status, {
    'content-type': 'application/json',
    'content-length': Buffer.byteLength(text),
    ...(cookies.length > 0 ? { 'set-cookie': cookies } : {}),
    // What was too much is still on its way: nobody reads it.
    ...(request.complete ? {} : { connection: 'close' }),
  });
  response.end(text);
}

/** What was sent, or as much of it as shows that it is too much. */
async function bodyOf(request: IncomingMessage): Promise<Uint8Array<ArrayBuffer>> {
  if (Number(request.headers['content-length'] ?? 0) > mostBytes) return new Uint8Array();
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of request.iterator({ destroyOnReturn: false })) {
    parts.push(part as Buffer);
    size += (part as Buffer).length;
    if (size > mostBytes) break;
  }
  return new Uint8Array(Buffer.concat(parts));
}

function requestOf(request: IncomingMessage, body: Uint8Array<ArrayBuffer>): Request {
  const scheme = (request.socket as TLSSocket).encrypted === true ? 'https' : 'http';
  const headers = new Headers();
  for (const [name, value] of Object.entries(request.headers))
    if (value !== undefined) headers.set(name, Array.isArray(value) ? value.join(', ') : value);
  return new Request(`${scheme}://${request.headers.host ?? 'localhost'}${request.url}`, {
    method: 'POST',
    headers,
    body,
  });
}
