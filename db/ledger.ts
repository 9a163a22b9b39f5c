import type postgres from 'postgres';
import { v7 } from 'uuid';
import type { Draft, Entry, Known } from '#shared/entries/entry.ts';
import { chainStart, entryHash, erasedBody } from '#shared/envelope.ts';
import type { Problem } from '#shared/problem.ts';
import { isoOf } from '#shared/time.ts';
import type { Db } from './connect.ts';
import { derived } from './derived.ts';
import { keepLives, touchesLives } from './lives.ts';
import { type ReadDraft, readDraft } from './read-draft.ts';
import { head, type ledger } from './schema.ts';
import { sha256 } from './sha256.ts';
import { Together } from './together.ts';
import { transact } from './transact.ts';

/** Who adds to the book, as the server knows it: nothing of this is taken from what was sent. */
export type Writer = {
  site: string;
  device: string;
  knownOf: (by: string) => Known;
};

/** The ledger's answer to one draft, in the order of the drafts. `already`: this id with this content was there. */
export type Receipt =
  | {
      id: string;
      status: 'written' | 'already';
      seq: number;
      hash: string;
      received_at: string;
      known: Known;
    }
  | { id: string; status: 'refused'; problems: Problem[] };

/** The server's clock, ms since 1970. */
export type Clock = () => number;

/** Says what is wrong with a draft, given the entries that this call has written before it. Empty = take it. */
export type Admit = (draft: Draft, soFar: readonly Entry[]) => Problem[];

/** Reads what `Admit` has to know. Asked under the lock of the chain: nobody writes between its answer and the entry. */
type Asking = (within: Db) => Promise<Admit>;

type Row = typeof ledger.$inferInsert;
type Seen = Pick<
  typeof ledger.$inferSelect,
  'id' | 'seq' | 'kind' | 'version' | 'at' | 'by' | 'body' | 'hash' | 'receivedAt' | 'known'
>;

const draftsTogether = 500; // of posts that wait for the same chain: as many as one post may hold

/** The end of a chain. */
type End = { seq: number; hash: string };

/** What the book has to say of a post, given its receipts: entries of the program's own, written with it or not at all. */
type Remark = (receipts: readonly Receipt[]) => readonly Draft[];

type Post = { writer: Writer; drafts: readonly Draft[]; clock: Clock; asking: Asking; remark: Remark };
const together = new Together<Post, Receipt[]>(({ drafts }) => drafts.length, draftsTogether);

/**
 * Adds drafts to a site's chain, in their order, in one transaction, and answers each by itself. When it returns,
 * what it calls written is on disk. The site's head row is locked meanwhile, so sequence numbers have no gaps and
 * two writers never interleave.
 *
 * The same id with the same content (all but `entered_at`, which a device may stamp anew when it sends again) is
 * answered with the first's receipt and changes nothing; with other content it is refused, as is what the schema
 * or `admit` refuses. A refused draft does not stop those after it.
 *
 * @throws Error for a site that is not in the book (a caller's bug), and the database's own faults
 */
export async function append(
  db: Db,
  writer: Writer,
  drafts: readonly Draft[],
  clock: Clock,
  admit: Admit = () => [],
): Promise<Receipt[]> {
  if (drafts.length === 0) return [];
  return transact(db, (within) => appendIn(within, writer, drafts, clock, admit));
}

/**
 * `append`, with what has to be known first read in the same transaction, behind the lock: whoever is admitted is
 * admitted by the book as it is when the entry is written. Posts that come meanwhile are written together after it,
 * in the order in which they came; `soFar` then holds what was written before a draft for others too. What `remark`
 * adds has no receipt; where the ledger refuses it nothing of the post is written.
 */
export async function appendAsked(
  db: Db,
  writer: Writer,
  drafts: readonly Draft[],
  clock: Clock,
  asking: Asking,
  remark: Remark = () => [],
): Promise<Receipt[]> {
  if (drafts.length === 0) return [];
  const post = { writer, drafts, clock, asking, remark };
  return together.add(db, writer.site, post, (posts) =>
    transact(db, async (within, unawaited) => {
      const { receipts, statements } = await writePosts(within, writer.site, posts);
      unawaited(...statements);
      return receipts;
    }),
  );
}

/**
 * Begins a new site's chain with its first entries: all of them or, when one is refused, none. `site` is given by
 * a caller that has to write beside the ledger first, what nobody could come in without.
 * @returns `site` null when something was refused
 */
export async function createSite(
  db: Db,
  writer: Omit<Writer, 'site'>,
  drafts: readonly Draft[],
  clock: Clock,
  site: string = v7(),
): Promise<{ site: string | null; receipts: Receipt[] }> {
  let receipts: Receipt[] = [];
  const isRefused = () => receipts.some(({ status }) => status === 'refused');
  try {
    await transact(db, async (within) => {
      await within.drizzle.insert(head).values({ site, seq: 0, hash: chainStart });
      receipts = await appendIn(within, { ...writer, site }, drafts, clock, () => []);
      if (isRefused()) throw new Error('createSite: refused'); // undoes the head
    });
    return { site, receipts };
  } catch (error) {
    if (isRefused()) return { site: null, receipts };
    throw error;
  }
}

/** `append` inside a transaction that the caller has begun: what was read in it and what is written are one. */
export async function appendIn(
  within: Db,
  writer: Writer,
  drafts: readonly Draft[],
  clock: Clock,
  admit: Admit,
): Promise<Receipt[]> {
  const asking = async () => admit;
  const posts = [{ writer, drafts, clock, asking, remark: () => [] }];
  const { receipts, statements } = await writePosts(within, writer.site, posts);
  await Promise.all(statements);
  return receipts[0] ?? [];
}

type Statement = postgres.PendingQuery<postgres.Row[]>;

/**
 * Posts to one chain, one after another in one transaction.
 * @returns the answers, and what writes them: statements that nobody has sent yet
 */
async function writePosts(
  within: Db,
  site: string,
  posts: readonly Post[],
): Promise<{ receipts: Receipt[][]; statements: Statement[] }> {
  // One connection: sent together and done in this order, so that all is read behind the lock.
  const locked = lockAndLookUp(
    within,
    site,
    posts.flatMap(({ drafts }) => drafts),
  );
  const asked = Promise.all(posts.map(({ asking }) => asking(within)));
  const [[end, seen], admits] = await Promise.all([locked, asked]);
  const pen = new Pen(end, seen);
  const receipts = posts.map(({ writer, drafts, clock, remark }, n) => {
    const hand = { writer, receivedAt: isoOf(clock()), admit: admits[n] ?? (() => []) };
    const answers = drafts.map((draft) => pen.take(draft.id, readDraft(draft), hand));
    for (const own of remark(answers)) {
      const { status } = pen.take(own.id, readDraft(own), { ...hand, admit: () => [] });
      if (status === 'refused') throw new Error(`append: a remark of kind ${own.kind} was refused`);
    }
    return answers;
  });
  if (pen.rows.length === 0) return { receipts, statements: [] };
  const statements = [insertion(within, pen.rows), moving(within, site, pen.end)];
  if (!touchesLives(pen.entries)) return { receipts, statements };
  await Promise.all(statements);
  await keepLives(within, site, pen.entries);
  return { receipts, statements: [] };
}

/** One text for any number of rows: the same statement for one figure and for a night, so that it is kept planned. */
const insertion = ({ sql }: Db, rows: readonly Row[]): Statement => sql`
  insert into ledger (site, seq, id, kind, version, at, entered_at, received_at, by, known, device, body, prev,
    hash, at_ms, subject, target, day)
  select * from json_to_recordset(${JSON.stringify(rows)}::text::json) as row (site uuid, seq bigint, id uuid,
    kind text, version integer, at text, "enteredAt" text, "receivedAt" text, by uuid, known text, device uuid,
    body text, prev text, hash text, "atMs" bigint, subject uuid, target uuid, day text)`;

const moving = ({ sql }: Db, site: string, { seq, hash }: End): Statement =>
  sql`update head set seq = ${seq}, hash = ${hash} where site = ${site}`;

/** Locks the end of the chain, then looks for the ids: sent together, the second sees all that the lock waited for. */
async function lockAndLookUp(
  { sql }: Db,
  site: string,
  drafts: readonly Draft[],
): Promise<[End, Map<string, Seen>]> {
  const typed = drafts.map(({ id }) => (typeof id === 'string' ? id.toLowerCase() : ''));
  const ids = [...new Set(typed)].filter((id) => uuid.test(id));
  const [[end], seen] = await Promise.all([
    sql<End[]>`select seq::float8 as seq, hash from head where site = ${site} for update`,
    sql<Seen[]>`
      select id, seq::float8 as seq, kind, version, at, by, body, hash, received_at as "receivedAt", known
      from ledger where site = ${site} and id = any(${ids}::uuid[])`,
  ]);
  if (end === undefined) throw new Error(`append: no site ${site} in this book`);
  return [end, new Map(seen.map((row) => [row.id, row]))];
}

const idTaken: Problem = { field: 'id', problem: 'id_taken', remedy: 'send_as_new', values: {} };
const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** Who holds the pen for a draft. */
type Hand = { writer: Writer; receivedAt: string; admit: Admit };

/** Writes drafts one after another behind the end of a chain; what it wrote is in `rows` and `entries`. */
class Pen {
  readonly rows: Row[] = [];
  readonly entries: Entry[] = [];
  end: End;
  private readonly seen: Map<string, Seen>;

  constructor(end: End, seen: Map<string, Seen>) {
    this.end = { seq: end.seq, hash: end.hash };
    this.seen = seen;
  }

  take(id: string, read: ReadDraft, hand: Hand): Receipt {
    const refused = (problems: Problem[]): Receipt => ({ id, status: 'refused', problems });
    if (read.problems !== null) return refused(read.problems);
    const { draft, body } = read;
    const before = this.seen.get(draft.id);
    if (before !== undefined) {
      if (!isSame(before, draft, body)) return refused([idTaken]);
      return { ...receiptOf(before), id, status: 'already' };
    }
    const problems = hand.admit(draft, this.entries);
    if (problems.length > 0) return refused(problems);
    return { ...receiptOf(this.write(draft, body, hand)), id, status: 'written' };
  }

  private write(draft: Draft, body: string, { writer, receivedAt }: Hand): Seen {
    const { site, device, knownOf } = writer;
    const { id, kind, version, at, entered_at, by } = draft;
    const seq = this.end.seq + 1;
    const prev = this.end.hash;
    const known = knownOf(by);
    const said = { site, seq, id, kind, version, at, entered_at, received_at: receivedAt, by, known, device };
    const hash = entryHash(said, body, prev, sha256);
    const row = { site, seq, id, kind, version, at, enteredAt: entered_at, receivedAt, by, known, device };
    const written = { ...row, body, prev, hash };
    this.rows.push({ ...written, ...derived(draft) });
    this.entries.push({ ...said, body: draft.body } as Entry);
    this.seen.set(id, written);
    this.end = { seq, hash };
    return written;
  }
}

const isSame = (before: Seen, draft: Draft, body: string): boolean =>
  before.kind === draft.kind &&
  before.version === draft.version &&
  before.at === draft.at &&
  before.by === draft.by &&
  (before.body === body || before.body === erasedBody(sha256(body))); // also when its text went since

const receiptOf = ({ seq, hash, receivedAt, known }: Seen) => ({
  seq,
  hash,
  received_at: receivedAt,
  known: known as Known,
});
