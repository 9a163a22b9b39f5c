import { describe, expect, test } from 'vitest';
import type { Confirming } from '#lib/sheet/confirmed.ts';
import { exceptionWords } from '#lib/sheet/exception-words.ts';
import { exceptionsOf } from '#lib/sheet/exceptions.ts';
import { SheetNames } from '#lib/sheet/sheet-names.ts';
import { sheetWords } from '#lib/sheet/sheet-words.ts';
import { demoEntries, idOf } from '../fold/demo-book.ts';
import { dayOfDemo, friday } from './demo-day.ts';

/** What the manager said by phone about A7 that night, in the words of Friday's sheet. */
function wordsOfA7(confirming: Confirming): string {
  const day = dayOfDemo(friday);
  const a7 = exceptionsOf(day).find((one) => one.kind === 'broken' && one.batch.name === 'BR-A');
  if (!a7) throw new Error('A7 is not told of');
  return exceptionWords(new SheetNames(day, sheetWords('en'), 'en'), a7, confirming).lines.join(' ');
}

const signed: Confirming = demoEntries.filter((entry) => entry.kind === 'signature');
const open = 'A decision by phone is not confirmed yet.';
const confirmed = 'Decision by phone confirmed in signing (DM, 17 Oct 12:46).';

describe('a decision by phone on the sheet', () => {
  test('is not confirmed while nobody has signed', () => expect(wordsOfA7([])).toContain(open));

  test('is confirmed when its maker signed with a decision on it, and the sheet says when', () => {
    expect(wordsOfA7(signed)).toContain(confirmed);
    expect(wordsOfA7(signed)).not.toContain(open);
  });

  test('is not confirmed by the signature of somebody else', () => {
    expect(wordsOfA7(signed.map((entry) => ({ ...entry, by: idOf('p04') })))).toContain(open);
  });

  test('is not confirmed by a signature that says nothing on it', () => {
    const silent = signed.map((entry) => ({ ...entry, body: { ...entry.body, open_items: [] } }));
    expect(wordsOfA7(silent)).toContain(open);
  });
});
