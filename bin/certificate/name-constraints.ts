import { addressBytes, isOwnAddress, maskBytes, type Names, ownBlocks, ownSuffixes } from './names.ts';

/** What an authority may vouch for beside the kitchen's own network: names and addresses that the owner named. */
export type Permitted = Names;

export const nameConstraintsOid = '2.5.29.30';

const tagged = (tag: number, content: readonly number[]): number[] => [
  tag,
  ...(content.length < 0x80
    ? [content.length]
    : content.length < 0x100
      ? [0x81, content.length]
      : [0x82, content.length >> 8, content.length & 0xff]),
  ...content,
];

const subtree = (name: number[]): number[] => tagged(0x30, name);
const dnsName = (name: string): number[] => subtree(tagged(0x82, [...Buffer.from(name, 'ascii')]));
const addressBlock = (address: string, bits: number): number[] => {
  const first = addressBytes(address);
  return subtree(tagged(0x87, [...first, ...maskBytes(bits, first.length)]));
};

/**
 * The extension that binds an authority to names (RFC 5280, 4.2.1.10), in DER: whatever a stolen key may sign, a
 * phone takes it for no address outside the kitchen's own network.
 */
export function nameConstraints(permitted: Permitted): Uint8Array<ArrayBuffer> {
  const names = [...new Set([...ownSuffixes, ...permitted.dns])].map(dnsName);
  const own = ownBlocks.map(({ address, bits }) => addressBlock(address, bits));
  const more = permitted.ip
    .filter((address) => !isOwnAddress(address))
    .map((address) => addressBlock(address, 8 * addressBytes(address).length));
  return Uint8Array.from(tagged(0x30, tagged(0xa0, [...names, ...own, ...more].flat())));
}

/** Whether an authority bound so may vouch for this name. */
export const permitsDns = (permitted: Permitted, name: string): boolean =>
  [...ownSuffixes, ...permitted.dns].some((suffix) => name === suffix || name.endsWith(`.${suffix}`));

export const permitsAddress = (permitted: Permitted, address: string): boolean =>
  isOwnAddress(address) || permitted.ip.includes(address);
