import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { lastBook, takeBook } from '#app/client/take-book.ts';
import { heldStore, phoneStore } from '#app/outbox/phone-store.ts';
import { noteDraft } from '#app/round/drafts.ts';

const site = '01999999-0000-7000-8000-000000000001';
const by = '01999999-0000-7000-8000-00000000000a';
const entries = [{ id: 'of the book' }];
const note = noteDraft(
  { now: 1_760_000_000_000, by, id: () => '01999999-0000-7000-8000-000000000009' },
  {
    text: 'the door stands open',
    lang: 'en',
    batch: null,
    piece: null,
    equipment: null,
    probe: null,
    round: null,
    could_not: null,
  },
);

type Asked = { edition: string | null };
let asked: Asked[] = [];

/** A server of which only its answers are known. */
function answers(...inTurn: (Response | Error)[]): void {
  vi.stubGlobal('fetch', async (_: string, { headers }: { headers: Record<string, string> }) => {
    asked.push({ edition: headers['if-none-match'] ?? null });
    const next = inTurn.shift() ?? new TypeError('Failed to fetch');
    if (next instanceof Error) throw next;
    return next;
  });
}

const whole = (edition: string): Response =>
  Response.json(
    { site, entries, hand: by, hands: [by], lang: 'es' },
    { headers: { etag: edition, 'book-clock': String(Date.now() + 90_000) } },
  );
const unchanged = (): Response =>
  new Response(null, { status: 304, headers: { etag: '"one"', 'book-clock': String(Date.now() + 30_000) } });
const refused = (problem: string): Response =>
  Response.json({ problems: [{ field: '', problem, remedy: 'r', values: {} }] }, { status: 401 });

beforeEach(async () => {
  asked = [];
  await phoneStore().book.clear();
  await phoneStore().out.clear();
});
afterEach(() => {
  vi.unstubAllGlobals();
});

describe('the book that a phone keeps', () => {
  test('is not sent again while nothing was written; its age and the clocks are measured anew', async () => {
    answers(whole('"one"'), unchanged(), whole('"two"'));
    const first = await takeBook();
    expect(first).toMatchObject({ entries, lang: 'es', edition: '"one"' });
    const again = await takeBook();
    expect(again).toMatchObject({ entries, edition: '"one"' });
    expect((again as { bookAhead: number }).bookAhead).toBeGreaterThan(29_000);
    expect((again as { bookAhead: number }).bookAhead).toBeLessThan(31_000);
    expect((first as { bookAhead: number }).bookAhead).toBeGreaterThan(89_000);
    await takeBook();
    expect(asked.map(({ edition }) => edition)).toEqual([null, '"one"', '"one"']);
    expect(await lastBook()).toMatchObject({ edition: '"two"' });
  });

  test('stays when nothing answers, and when nobody is signed in any more', async () => {
    answers(whole('"one"'), new TypeError('Failed to fetch'), refused('nobody_signed_in'));
    await takeBook();
    expect(await takeBook()).toBeNull();
    expect(await takeBook()).toBeNull();
    expect(await lastBook()).toMatchObject({ edition: '"one"', entries });
  });

  test('leaves a phone that was put out; what was written there stays, marked for a lead', async () => {
    answers(whole('"one"'), refused('device_unknown'));
    await takeBook();
    await heldStore(site).put([{ draft: note, tried: 0, refused: null }]);
    expect(await takeBook()).toBe('revoked');
    expect(await lastBook()).toBeNull();
    const held = await heldStore(site).all();
    expect(held).toHaveLength(1);
    expect(held[0]).toMatchObject({ draft: note, waited: true });
  });
});
