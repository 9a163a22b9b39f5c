import { type ChildProcess, fork } from 'node:child_process';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { type Db, openBook } from '#db/connect.ts';
import { BookRefused } from '#db/refused.ts';
import { openingWords, refusalWords } from '#db/words.ts';
import { buildIfChanged, root } from './build.ts';
import { keepNightly } from './nightly.ts';
import { say, secondsSince } from './say.ts';

const started = Date.now();

function portAsked(): number {
  const typed = process.env.PORT ?? '3000';
  const port = Number(typed);
  if (Number.isInteger(port) && port > 0 && port < 65_536) return port;
  say(`PORT is "${typed}": it must be a whole number from 1 to 65535, for example PORT=3000.`);
  process.exit(2);
}

/** The port of https: HTTPS_PORT, or 443 beyond that of http (3443; 443 beside 80). "off" = none. */
function securePortAsked(plain: number): number | null {
  const typed = process.env.HTTPS_PORT || String(plain === 80 ? 443 : plain + 443);
  const chosen = Number(typed);
  if (typed === 'off' || (!process.env.HTTPS_PORT && chosen > 65_535)) return null;
  if (Number.isInteger(chosen) && chosen > 0 && chosen < 65_536 && chosen !== plain) return chosen;
  say(
    `HTTPS_PORT is "${typed}": it must be a whole number from 1 to 65535 that is not PORT, or the word off. For example HTTPS_PORT=3443.`,
  );
  process.exit(2);
}

/** Where phones in the kitchen reach this machine. HOSTNAME is not asked: containers set it to something else. */
function addresses(host: string, port: number, scheme = 'http'): string[] {
  if (host !== '0.0.0.0' && host !== '::') return [`${scheme}://${host}:${port}`];
  const outside = Object.values(networkInterfaces())
    .flat()
    .filter((one) => one?.family === 'IPv4' && !one.internal)
    .map((one) => `${scheme}://${one?.address}:${port}`);
  return [`${scheme}://localhost:${port}`, ...outside];
}

const port = portAsked();
const securePort = securePortAsked(port);
const host = process.env.HOST ?? '0.0.0.0';

const OPENINGS = 5;

/**
 * Opens the book (and migrates it) before any page asks, so that a refusal is said here in words. A database that
 * dies under the opening (a tripped breaker, a killed server) is opened again a few times.
 */
async function openOrSay(tried = 1): Promise<Db> {
  try {
    return await openBook(process.env, openingWords('en', say));
  } catch (cause) {
    if (cause instanceof BookRefused) {
      for (const line of refusalWords('en', cause)) say(line);
      process.exit(2);
    }
    if (tried >= OPENINGS) throw cause;
    say(
      `The database went away while it was opened (${cause instanceof Error ? cause.message : cause}). Trying again.`,
    );
  }
  await new Promise((wake) => setTimeout(wake, 1000 * tried));
  return openOrSay(tried + 1);
}

await buildIfChanged();
say('Opening the book …');
const book = await openOrSay();
const quitNightly = keepNightly({ env: process.env, say });
let server: ChildProcess;
let stopping = false;
let restarts = 0;
/** https as the server says it is: where and by which certificate, or in words why not. */
let secure: { port: number; fingerprint: string } | string | null = null;

type FromServer = { listening?: number; refused?: string } & {
  secure?: { port: number; fingerprint: string };
  notSecure?: string;
};

function serve(): void {
  server = fork(join(root, 'bin/serve.ts'), {
    env: {
      ...process.env,
      NODE_ENV: 'production',
      HOLDPROOF_PORT: String(port),
      HOLDPROOF_HOST: host,
      HOLDPROOF_HTTPS_PORT: securePort === null ? '' : String(securePort),
    },
  });
  server.on('message', (message: FromServer) => {
    if (message.secure) secure = message.secure;
    if (message.notSecure) secure = message.notSecure;
    if (message.listening) announce();
    if (message.refused) refusePort(message.refused);
  });
  server.on('exit', (code) => {
    if (stopping || code === 2) return;
    restarts += 1;
    // A driver fault can take the process down when the database dies under a write; nothing acknowledged is lost.
    say(`The server ended unexpectedly (${code ?? 'killed'}); starting it again (${restarts}).`);
    setTimeout(serve, Math.min(5000, 200 * restarts));
  });
}

function announce(): void {
  if (restarts > 0) {
    say('The server is back.');
    return;
  }
  const [here, ...phones] = addresses(host, port);
  say(`Holdproof is ready after ${secondsSince(started)} s: ${here}`);
  for (const address of phones) say(`  from a phone in the same network: ${address}`);
  announceSecure();
  say('Local codes decide; the person in charge decides. Stop with Ctrl+C.');
}

function announceSecure(): void {
  if (secure === null) return;
  if (typeof secure === 'string') {
    say(`  no https: ${secure}. Phones cannot go on without network until it is there.`);
    return;
  }
  const [here, ...phones] = addresses(host, secure.port, 'https');
  say(`  sealed, and for going on without network: ${(phones.length > 0 ? phones : [here]).join(', ')}`);
  say(`  how a phone accepts its certificate: ${addresses(host, port).at(-1)}/reach/secure`);
  say(`  the certificate's fingerprint, to compare: ${secure.fingerprint}`);
}

function refusePort(code: string): void {
  const why = code === 'EADDRINUSE' ? `port ${port} is taken by another program` : code;
  say(`Cannot listen at ${host}:${port}: ${why}. Choose another, for example: PORT=${port + 1} npm start`);
  void stop(2);
}

async function stop(status: number): Promise<void> {
  if (stopping) return;
  stopping = true;
  void quitNightly();
  server.kill('SIGTERM');
  await new Promise((done) => (server.exitCode === null ? server.once('exit', done) : done(null)));
  await book.close();
  process.exit(status);
}

for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => void stop(0));
serve();
