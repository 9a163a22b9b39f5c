import { sealData, unsealData } from 'iron-session';
import type { Db } from '#db/connect.ts';
import { sealKey } from '#db/seal.ts';

/** What the sealed cookie of a device holds. Its token is known to nobody else: the book keeps a hash of it. */
export type SealedDevice = {
  token: string;
  /** Who last entered the secret again for a decision or a signature, and when (ms). */
  confirmed: { person: string; at: number } | null;
};

export const deviceCookie = 'device';
const ttl = 400 * 86_400; // seconds; browsers keep no cookie longer. A device is put out by revoking it

/** The cookie's value for a device. */
export const sealed = async (db: Db, device: SealedDevice): Promise<string> =>
  sealData(device, { password: await sealKey(db), ttl });

/** Values opened lately: a phone on its round sends the same one with each figure, and opening it derives keys. */
const opened = new Map<string, SealedDevice>();
const openedAtMost = 200;

/** What a cookie's value holds; null when it is not of our making, was changed, or is too old. */
export async function unsealed(db: Db, value: string): Promise<SealedDevice | null> {
  const held = opened.get(value) ?? (await open(db, value));
  if (held === null) return null;
  if (opened.size >= openedAtMost) opened.clear();
  opened.set(value, held);
  return held;
}

async function open(db: Db, value: string): Promise<SealedDevice | null> {
  const { token, confirmed = null } = await unsealData<Partial<SealedDevice>>(value, {
    password: await sealKey(db),
    ttl,
  });
  return token === undefined ? null : { token, confirmed };
}

/** Attributes of every cookie that we set. `secure` where the browser came by https, also through a proxy. */
export function cookieOptions(request: Request, maxAge: number = ttl) {
  return {
    httpOnly: true,
    sameSite: 'lax',
    secure: isHttps(request.headers, request.url),
    path: '/',
    maxAge,
  } as const;
}

/** Whether the browser came by https. A header that lies here only spoils the liar's own cookie. */
export const isHttps = (headers: Headers, url: string): boolean =>
  (headers.get('x-forwarded-proto')?.split(',')[0]?.trim() ?? new URL(url).protocol.slice(0, -1)) === 'https';
