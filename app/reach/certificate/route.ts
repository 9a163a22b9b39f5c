import { X509Certificate } from 'node:crypto';
import { authority } from '../secure-ways.ts';

export const dynamic = 'force-dynamic';

/** The certificate of this kitchen's authority, for a phone to accept. It is no secret: anybody may have it. */
export function GET(): Response {
  const pem = authority();
  if (pem === null) return new Response(null, { status: 404 });
  return new Response(new Uint8Array(new X509Certificate(pem).raw), {
    headers: {
      'content-type': 'application/x-x509-ca-cert',
      'content-disposition': 'attachment; filename="holdproof-kitchen.crt"',
      'cache-control': 'no-store',
    },
  });
}
