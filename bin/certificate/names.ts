import { isIP, isIPv4 } from 'node:net';
import { hostname, networkInterfaces } from 'node:os';

/** HOLDPROOF_NAMES is asked of it. */
export type Environment = Readonly<Record<string, string | undefined>>;

/** By which names and addresses a phone may ask for this machine. */
export type Names = { dns: string[]; ip: string[] };

/** A block of addresses: the first one and how many of its leading bits count. */
type Block = { address: string; bits: number };

// Addresses that belong to no network but one's own: RFC 1918, 3927, 6598, 1122 (IPv4); 4193, 4291 (IPv6).
export const ownBlocks: readonly Block[] = [
  { address: '10.0.0.0', bits: 8 },
  { address: '172.16.0.0', bits: 12 },
  { address: '192.168.0.0', bits: 16 },
  { address: '169.254.0.0', bits: 16 },
  { address: '100.64.0.0', bits: 10 },
  { address: '127.0.0.0', bits: 8 },
  { address: 'fc00::', bits: 7 },
  { address: 'fe80::', bits: 10 },
  { address: '::1', bits: 128 },
];

/** Names under which nobody outside is reached: RFC 6761, 6762, 8375; `internal` by ICANN, `lan` by custom (from memory). */
export const ownSuffixes: readonly string[] = ['localhost', 'local', 'home.arpa', 'internal', 'lan'];

/** The bytes of an address (4 or 16). @throws Error for what is no address */
export function addressBytes(address: string): number[] {
  if (isIPv4(address)) return address.split('.').map(Number);
  if (isIP(address) !== 6) throw new Error(`addressBytes: "${address}" is no address`);
  const [head = '', tail] = address.split('::');
  const words = (text: string): number[] =>
    text === '' ? [] : text.split(':').map((word) => Number.parseInt(word, 16));
  const left = words(head);
  const right = tail === undefined ? [] : words(tail);
  const middle = new Array<number>(8 - left.length - right.length).fill(0);
  return [...left, ...middle, ...right].flatMap((word) => [word >> 8, word & 0xff]);
}

/** The mask of a block, as bytes. */
export const maskBytes = (bits: number, length: number): number[] =>
  Array.from({ length }, (_, i) => (0xff00 >> Math.max(0, Math.min(8, bits - 8 * i))) & 0xff);

const within = (address: string, block: Block): boolean => {
  const asked = addressBytes(address);
  const first = addressBytes(block.address);
  const mask = maskBytes(block.bits, first.length);
  return asked.length === first.length && mask.every((m, i) => ((asked[i] ?? 0) & m) === (first[i] ?? 0));
};

/** Whether an address can be one of this kitchen's network only. */
export const isOwnAddress = (address: string): boolean => ownBlocks.some((block) => within(address, block));

/**
 * What HOLDPROOF_NAMES lists: further names and addresses, apart by commas or spaces.
 * @throws Error in words when one of them is neither
 */
export function namesAsked(env: Environment): Names {
  const all = (env.HOLDPROOF_NAMES ?? '')
    .toLowerCase()
    .split(/[\s,]+/)
    .filter(Boolean);
  const odd = all.find((name) => isIP(name) === 0 && !/^[a-z0-9]([a-z0-9.-]*[a-z0-9])?$/.test(name));
  if (odd !== undefined) {
    throw new Error(
      `HOLDPROOF_NAMES holds "${odd}": write names and addresses only, for example pit.example`,
    );
  }
  return { dns: all.filter((name) => isIP(name) === 0), ip: all.filter((name) => isIP(name) !== 0) };
}

/** What this machine calls itself, as one label; empty when it has no name of its own. */
export function ownName(): string {
  const bare = (hostname().toLowerCase().split('.')[0] ?? '').replace(/[^a-z0-9-]/g, '');
  return bare === 'localhost' ? '' : bare;
}

/** This machine's own names and addresses now, with those of HOLDPROOF_NAMES. */
export function namesNow(env: Environment): Names {
  const asked = namesAsked(env);
  const bare = ownName();
  const own = bare === '' ? [] : [bare, `${bare}.local`];
  const cards = Object.values(networkInterfaces())
    .flat()
    .flatMap((card) => (card?.family === 'IPv4' && isOwnAddress(card.address) ? [card.address] : []));
  return {
    dns: [...new Set(['localhost', ...own, ...asked.dns])],
    ip: [...new Set(['127.0.0.1', '::1', ...cards, ...asked.ip])],
  };
}
