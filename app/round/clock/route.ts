export const dynamic = 'force-dynamic';

/** The book's clock, ms since 1970 (UTC): a phone compares its own with it before it dates a look. */
export const GET = (): Response =>
  Response.json({ now: Date.now() }, { headers: { 'cache-control': 'no-store' } });
