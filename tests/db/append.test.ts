import { v7 } from 'uuid';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { append, appendAsked, createSite } from '#db/ledger.ts';
import { headOf, loadAll } from '#db/load.ts';
import type { Draft } from '#shared/entries/entry.ts';
import { clock, evening, hand, reading, site } from './drafts.ts';
import { type FreshBook, freshBook } from './fresh-book.ts';

let book: FreshBook;
beforeAll(async () => {
  book = await freshBook();
});
afterAll(() => book.close());

async function kitchen(): Promise<string> {
  const { site: id } = await createSite(book.db, hand, [site()], clock);
  if (id === null) throw new Error('the site was refused');
  return id;
}

describe('appending answers entry by entry', () => {
  test('a draft is written once; the same again is answered with its first seq and changes nothing', async () => {
    const here = await kitchen();
    const draft = reading(null, '158.0');
    const [first] = await append(book.db, { ...hand, site: here }, [draft], clock);
    const before = await headOf(book.db, here);
    const [again] = await append(book.db, { ...hand, site: here }, [draft], () => clock() + 5000);
    expect(first).toMatchObject({ id: draft.id, status: 'written', seq: 2 });
    expect(again).toEqual({ ...first, status: 'already' });
    expect(await headOf(book.db, here)).toEqual(before);
  });

  test('the same id with another content is refused, and those after it are written', async () => {
    const here = await kitchen();
    const draft = reading(null, '158.0');
    await append(book.db, { ...hand, site: here }, [draft], clock);
    const other = { ...reading(null, '185.0'), id: draft.id };
    const next = reading(null, '151.0');
    const receipts = await append(book.db, { ...hand, site: here }, [other, next], clock);
    expect(receipts).toMatchObject([
      { status: 'refused', problems: [{ field: 'id', problem: 'id_taken', remedy: 'send_as_new' }] },
      { status: 'written', seq: 3 },
    ]);
  });

  test('the same draft twice in one array is one entry', async () => {
    const here = await kitchen();
    const draft = reading(null, '149');
    const receipts = await append(book.db, { ...hand, site: here }, [draft, draft], clock);
    expect(receipts.map(({ status }) => status)).toEqual(['written', 'already']);
    expect(await loadAll(book.db, here)).toHaveLength(2);
  });

  test('what the program remarks on a post is written with it, or nothing of it is', async () => {
    const here = await kitchen();
    const [look, other, own] = [reading(null, '150'), reading(null, '151'), reading(null, '152')];
    const writer = { ...hand, site: here };
    const asking = async () => () => [];
    const receipts = await appendAsked(book.db, writer, [look], clock, asking, ([receipt]) =>
      receipt?.status === 'written' ? [own] : [],
    );
    expect(receipts).toMatchObject([{ id: look.id, status: 'written', seq: 2 }]);
    expect((await loadAll(book.db, here)).map(({ id }) => id).slice(1)).toEqual([look.id, own.id]);
    const wrong = { ...reading(null, '153'), at: 'tomorrow' };
    await expect(appendAsked(book.db, writer, [other], clock, asking, () => [wrong])).rejects.toThrow(
      /remark/,
    );
    expect(await loadAll(book.db, here)).toHaveLength(3);
  });

  test('what the caller does not admit is refused with its problems; it sees what this call wrote before', async () => {
    const here = await kitchen();
    const drafts = [reading(null, '150'), reading(null, '151'), reading(null, '152')];
    const receipts = await append(book.db, { ...hand, site: here }, drafts, clock, (draft, soFar) =>
      soFar.length === 1 && draft.id === drafts[1]?.id
        ? [{ field: 'body.value', problem: 'gone', remedy: 'reopen', values: {} }]
        : [],
    );
    expect(receipts.map(({ status }) => status)).toEqual(['written', 'refused', 'written']);
    expect(receipts[2]).toMatchObject({ seq: 3 });
  });

  test('a body that its schema refuses, or that holds half a letter, is refused and named', async () => {
    const here = await kitchen();
    const odd = reading(null, '150', evening, { late_reason: '\ud800' });
    const blank = { ...reading(null, '150'), body: { value: '' } } as unknown as Draft;
    const receipts = await append(book.db, { ...hand, site: here }, [odd, blank], clock);
    expect(receipts).toMatchObject([
      { status: 'refused', problems: [{ problem: 'unreadable_sign' }] },
      { status: 'refused' },
    ]);
    expect(await loadAll(book.db, here)).toHaveLength(1);
  });

  test('what was written is read back as it was written, to the character', async () => {
    const here = await kitchen();
    const draft = { ...reading(null, '158.0', evening, { late_reason: 'añadido: 3 °C \u0000 "«»"' }) };
    draft.at = '2026-10-16T16:00:00.120-05:00';
    await append(book.db, { ...hand, site: here }, [draft], clock);
    const [, read] = await loadAll(book.db, here);
    expect(read).toEqual({
      ...draft,
      site: here,
      seq: 2,
      received_at: '2026-10-16T21:01:00Z',
      known: 'secret',
      device: hand.device,
    });
  });

  test('a site is begun whole or not at all', async () => {
    const bad = { ...site(), body: { name: '' } } as unknown as Draft;
    const { site: id, receipts } = await createSite(book.db, hand, [reading(null, '1'), bad], clock);
    expect(id).toBeNull();
    expect(receipts.map(({ status }) => status)).toEqual(['written', 'refused']);
  });

  test('a site that is not in the book is a bug of the caller, and nothing is written', async () => {
    await expect(append(book.db, { ...hand, site: v7() }, [reading(null, '1')], clock)).rejects.toThrow();
  });
});

describe('the chain under many hands', () => {
  test('ten clients that post the same hundred at once write each once, without a gap', async () => {
    const here = await kitchen();
    const drafts = Array.from({ length: 100 }, (_, n) => reading(null, String(100 + n)));
    const answers = await Promise.all(
      Array.from({ length: 10 }, () => append(book.db, { ...hand, site: here }, drafts, clock)),
    );
    const written = answers.flat().filter(({ status }) => status === 'written');
    expect(written).toHaveLength(100);
    const seqs = (await loadAll(book.db, here)).map(({ seq }) => seq).sort((a, b) => a - b);
    expect(seqs).toEqual(Array.from({ length: 101 }, (_, n) => n + 1));
    for (const answer of answers) {
      expect(answer.map((one) => ('seq' in one ? one.seq : 0))).toEqual(drafts.map((_, n) => n + 2));
    }
  });

  test('many clients with entries of their own leave one chain without a gap', async () => {
    const here = await kitchen();
    await Promise.all(
      Array.from({ length: 60 }, (_, n) =>
        append(book.db, { ...hand, site: here }, [reading(null, String(100 + n))], clock),
      ),
    );
    const seqs = (await loadAll(book.db, here)).map(({ seq }) => seq).sort((a, b) => a - b);
    expect(seqs).toEqual(Array.from({ length: 61 }, (_, n) => n + 1));
    expect((await headOf(book.db, here))?.seq).toBe(61);
  });
});
