import type postgres from 'postgres';
import { BookRefused } from './refused.ts';

/**
 * A connection URL as options. `?host=/folder` (a socket) and `?port=` are given to the driver as options, which
 * does not understand them in a URL. Other parameters: `sslmode` and `application_name`.
 *
 * @throws BookRefused `bad_url`, naming the variable and never the URL, which may hold a password
 */
export function urlOptions(variable: string, url: string): postgres.Options<Record<string, never>> {
  // A URL with a user and no host ("postgres://me@/book?host=/run") is usual here and no URL to the parser.
  const withHost = url.replace(/^(postgres(?:ql)?:\/\/(?:[^/@?]*@)?)(?=[/?])/, '$1localhost');
  if (!/^postgres(ql)?:\/\//.test(withHost) || !URL.canParse(withHost)) {
    throw new BookRefused('bad_url', { variable });
  }
  const { hostname, port, username, password, pathname, searchParams } = new URL(withHost);
  const ssl = searchParams.get('sslmode');
  return {
    host: searchParams.get('host') ?? decodeURIComponent(hostname).replace(/^\[|\]$/g, ''),
    port: Number(searchParams.get('port') ?? (port || 5432)),
    database: decodeURIComponent(pathname.slice(1)) || decodeURIComponent(username),
    username: decodeURIComponent(username),
    ...(password ? { password: decodeURIComponent(password) } : {}),
    ...(ssl === null || ssl === 'disable'
      ? {}
      : { ssl: ssl as 'require' | 'prefer' | 'allow' | 'verify-full' }),
    connection: { application_name: searchParams.get('application_name') ?? 'holdproof' },
  };
}
