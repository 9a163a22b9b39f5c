import { expect, test } from 'vitest';
import type { Db } from '#db/connect.ts';
import { Together } from '#db/together.ts';

const book = {} as Db; // only told apart from other books

/** Posts are words; each answer is the word with the number of its transaction. The first waits to be let go. */
function writer(most: number) {
  const together = new Together<string, string>((word) => word.length, most);
  const wrote: string[][] = [];
  let letGo: () => void = () => {};
  const first = new Promise<void>((done) => {
    letGo = done;
  });
  const post = (word: string, site = 'pit') =>
    together.add(book, site, word, async (words) => {
      const number = wrote.push([...words]);
      if (words.includes('first')) await first;
      if (words.includes('wrong')) throw new Error('no');
      return words.map((each) => `${each} in ${number}`);
    });
  return { post, wrote, letGo };
}

test('posts that come while one is written are written together after it, in their order, each with its own answer', async () => {
  const { post, wrote, letGo } = writer(100);
  const answers = ['first', 'second', 'third', 'fourth'].map((word) => post(word));
  letGo();
  expect(await Promise.all(answers)).toEqual(['first in 1', 'second in 2', 'third in 2', 'fourth in 2']);
  expect(wrote).toEqual([['first'], ['second', 'third', 'fourth']]);
  expect(await post('later')).toBe('later in 3');
});

test('no more are taken together than may be, but always one', async () => {
  const { post, wrote, letGo } = writer(6);
  const answers = ['first', 'abc', 'def', 'ghijklmnop', 'q'].map((word) => post(word));
  letGo();
  await Promise.all(answers);
  expect(wrote).toEqual([['first'], ['abc', 'def'], ['ghijklmnop'], ['q']]);
});

test('one that fails harms none of those beside it: each is tried alone, and only it is told so', async () => {
  const { post, wrote, letGo } = writer(100);
  const answers = ['first', 'good', 'wrong', 'better'].map((word) => post(word));
  letGo();
  const told = await Promise.allSettled(answers);
  expect(told.map(({ status }) => status)).toEqual(['fulfilled', 'fulfilled', 'rejected', 'fulfilled']);
  expect(wrote.slice(1)).toEqual([['good', 'wrong', 'better'], ['good'], ['wrong'], ['better']]);
});

test('what one site does never waits for another', async () => {
  const { post, letGo } = writer(100);
  const slow = post('first');
  expect(await post('other', 'bakery')).toBe('other in 2');
  letGo();
  expect(await slow).toBe('first in 1');
});
