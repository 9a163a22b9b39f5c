import { spawn } from 'node:child_process';
import { settlePlace } from '#db/embedded/place.ts';
import { appRole } from '#db/embedded/roles.ts';
import { silent } from '#db/say.ts';
import { urlOptions } from '#db/url.ts';

/** Where pg_dump finds the database that this environment opens, as its own variables; the password not on its line. */
function connection(env: NodeJS.ProcessEnv): Record<string, string> {
  if (!env.DATABASE_URL) {
    const { sockets } = settlePlace(env, silent);
    return {
      PGHOST: sockets,
      PGPORT: '5432',
      PGUSER: appRole,
      PGDATABASE: env.HOLDPROOF_DATABASE || 'holdproof',
    };
  }
  const { host, port, database, username, password } = urlOptions('DATABASE_URL', env.DATABASE_URL);
  return {
    PGHOST: String(host),
    PGPORT: String(port),
    PGDATABASE: String(database),
    PGUSER: String(username),
    ...(typeof password === 'string' ? { PGPASSWORD: password } : {}),
  };
}

/**
 * PostgreSQL's own dump (custom format) where its tools exist.
 * @returns null = made; else the program's last words, or `missing` where there is no pg_dump
 */
export function ownDump(env: NodeJS.ProcessEnv, file: string): Promise<'missing' | string | null> {
  return new Promise((done) => {
    const child = spawn('pg_dump', ['--format=custom', '--no-password', `--file=${file}`], {
      env: { ...env, ...connection(env) },
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    let said = '';
    child.stderr.on('data', (data: Buffer) => {
      said = `${said}${data}`.slice(-2000);
    });
    child.on('error', () => done('missing'));
    child.on('close', (code) => done(code === 0 ? null : said.trim().split('\n').at(-1) || String(code)));
  });
}
