import { HttpResponse, http } from 'msw';
import { setupServer } from 'msw/node';
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest';
import { draft, patienceMs, postEntries } from '#app/client/post-entries.ts';

const book = 'http://kitchen.test';
const server = setupServer();
const ownFetch = globalThis.fetch;

beforeAll(() => {
  server.listen({ onUnhandledFrame: 'error' });
  // A page asks by path; outside a browser there is no page to complete it.
  const asked = globalThis.fetch;
  globalThis.fetch = (path, init) => asked(new URL(String(path), book), init);
});
afterEach(() => server.resetHandlers());
afterAll(() => {
  globalThis.fetch = ownFetch;
  server.close();
});

const hand = '01a20000-0000-7000-8000-000000000001';
const entry = () =>
  draft(
    'note',
    {
      text: 'fire low',
      lang: 'en',
      batch: null,
      piece: null,
      equipment: null,
      probe: null,
      round: null,
      could_not: null,
    },
    { by: hand },
  );

describe('posting never throws, and says what happened so that nothing typed is let go', () => {
  test('no network: kept here, tried again', async () => {
    server.use(http.post(`${book}/api/entries`, () => HttpResponse.error()));
    expect(await postEntries([entry()])).toEqual({
      problems: [{ field: '', problem: 'no_network', remedy: 'kept_here_retry', values: {} }],
    });
  });

  test('the database is away: the answer’s own problem comes through', async () => {
    const away = { field: '', problem: 'database_unreachable', remedy: 'kept_here_retry', values: {} };
    server.use(
      http.post(`${book}/api/entries`, () => HttpResponse.json({ problems: [away] }, { status: 503 })),
    );
    expect(await postEntries([entry()])).toEqual({ problems: [away] });
  });

  test('a network that takes the request and gives nothing back is waited for half a minute and no longer', async () => {
    const patience = vi.spyOn(AbortSignal, 'timeout').mockImplementation(() => {
      const ended = new AbortController();
      setTimeout(() => ended.abort(), 30);
      return ended.signal;
    });
    server.use(http.post(`${book}/api/entries`, () => new Promise<never>(() => {})));
    expect(await postEntries([entry()])).toMatchObject({ problems: [{ problem: 'no_network' }] });
    expect(patience).toHaveBeenCalledWith(patienceMs);
    patience.mockRestore();
  });

  test('an answer that is cut off or no JSON is no receipt', async () => {
    server.use(http.post(`${book}/api/entries`, () => HttpResponse.text('{"receipts": [')));
    const answer = await postEntries([entry()]);
    expect(answer).toMatchObject({ problems: [{ remedy: 'kept_here_retry' }] });
  });

  test('receipts come back as they were given, and the draft was sent with its own id', async () => {
    const sent = entry();
    server.use(
      http.post(`${book}/api/entries`, async ({ request }) => {
        const [received] = (await request.json()) as { id: string }[];
        return HttpResponse.json({ receipts: [{ id: received?.id, seq: 7, problem: null, problems: [] }] });
      }),
    );
    expect(await postEntries([sent])).toMatchObject({ receipts: [{ id: sent.id, seq: 7 }] });
  });
});
