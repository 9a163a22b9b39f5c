/**
 * A short name for what goes on next: letters of the food and a letter for "the how manieth today", like the
 * tags that kitchens write by hand ("Pork shoulder", second of the day: "PS-B").
 *
 * @param food the food's name as set up; words after the first comma are left out of the letters
 * @param taken names of batches that are open or were made today; none of them is suggested again
 */
export function suggestedName(food: string, taken: Iterable<string>): string {
  const short = letters(food);
  const used = new Set([...taken].map((name) => name.toUpperCase()));
  for (let turn = 0; ; turn++) {
    const name = `${short}-${turnLetters(turn)}`;
    if (!used.has(name)) return name;
  }
}

/** Initials of the first two words, or the first two letters of a single one; without accents, in capitals. */
function letters(food: string): string {
  const plain = food.normalize('NFD').replace(/\p{M}/gu, '').toUpperCase();
  const [head = ''] = plain.split(',');
  const words = head.match(/[A-Z0-9]+/g) ?? [];
  const [first, second] = words;
  if (first === undefined) return 'X';
  return second === undefined ? first.slice(0, 2) : first.slice(0, 1) + second.slice(0, 1);
}

const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** 0 → A, 25 → Z, 26 → AA: a busy day runs out of single letters, never of names. */
function turnLetters(turn: number): string {
  const size = alphabet.length;
  const last = alphabet.charAt(turn % size);
  return turn < size ? last : turnLetters(Math.floor(turn / size) - 1) + last;
}
