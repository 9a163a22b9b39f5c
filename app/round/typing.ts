/** What the large keys do to the figure that is being typed. `typed` stays as the hand wrote it: "158.0" stays "158.0". */

export type PadKey = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | '.' | '-' | 'back' | 'clear';

const longest = 7; // "-1450.5": more is no figure of a kitchen thermometer

/** The figure after one more key. A second point, or a digit too many, changes nothing. */
export function press(typed: string, key: PadKey): string {
  if (key === 'clear') return '';
  if (key === 'back') return typed.slice(0, -1);
  if (key === '-') return typed.startsWith('-') ? typed.slice(1) : `-${typed}`.slice(0, longest);
  if (key === '.' && typed.includes('.')) return typed;
  return typed.length >= longest ? typed : typed + key;
}

/** What was typed, as it goes into the book: without a point that nothing follows. */
export const asWritten = (typed: string): string => typed.replace(/\.$/, '').replace(/^(-?)\./, '$10.');

/** The decimal that `typed` means, or null while it is none: "", "-", ".". A blank never becomes 0. */
export function meant(typed: string): number | null {
  return /^-?(\d+\.?\d*|\.\d+)$/.test(typed) ? Number(typed) : null;
}

/** The pad key behind a key of a keyboard; null = not ours. A comma is a point in many kitchens. */
export function padKeyOf(key: string): PadKey | null {
  if (/^\d$/.test(key)) return key as PadKey;
  if (key === '.' || key === ',') return '.';
  if (key === '-') return '-';
  if (key === 'Backspace') return 'back';
  return key === 'Delete' ? 'clear' : null;
}
