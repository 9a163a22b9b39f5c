import { describe, expect, test } from 'vitest';
import { suggestedName } from '#app/batch/suggested-name.ts';

describe('a new batch is called by the letters of its food and the turn of the day', () => {
  test.each([
    { food: 'Brisket, whole, not injected', taken: [], name: 'BR-A', why: 'one word: its first two letters' },
    { food: 'Pork shoulder, bone-in', taken: [], name: 'PS-A', why: 'two words: their initials' },
    { food: 'Brisket', taken: ['BR-A', 'BR-B'], name: 'BR-C', why: 'the third today' },
    { food: 'Brisket', taken: ['br-a'], name: 'BR-B', why: 'small letters are the same name' },
    { food: 'Brisket', taken: ['BR-B'], name: 'BR-A', why: 'a free letter is used, no name comes twice' },
    { food: 'Costilla de res', taken: [], name: 'CD-A', why: 'Spanish names have initials too' },
    { food: 'Ñame asado', taken: [], name: 'NA-A', why: 'without accents, so that any keyboard finds it' },
    { food: '???', taken: [], name: 'X-A', why: 'a name without letters still gets one' },
  ])('$food after $taken is $name: $why', ({ food, taken, name }) => {
    expect(suggestedName(food, taken)).toBe(name);
  });

  test('a day with more than 26 batches of a food goes on with two letters', () => {
    const taken = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].map((letter) => `BR-${letter}`);
    expect(suggestedName('Brisket', taken)).toBe('BR-AA');
    expect(suggestedName('Brisket', [...taken, 'BR-AA'])).toBe('BR-AB');
  });
});
