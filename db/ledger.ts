import { and, eq, sql } from 'drizzle-orm';
import { v7 } from 'uuid';
import { type Draft, draftSchema, type Entry, isKind, type Kind, type Known } from '#shared/entries/entry.ts';
import { problemsOf } from '#shared/entries/issues.ts';
import { canonicalText, chainStart, entryHash, erasedBody } from '#shared/envelope.ts';
import type { Problem } from '#shared/problem.ts';
import { isoOf } from '#shared/time.ts';
import type { Db } from './connect.ts';
import { derived } from './derived.ts';
import { keepLives } from './lives.ts';
import { head, ledger } from './schema.ts';
import { sha256 } from './sha256.ts';
import { Together } from './together.ts';

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
type Asking = (tx: Tx) => Promise<Admit>;

export type Tx = Parameters<Parameters<Db['drizzle']['transaction']>[0]>[0];
type Row = typeof ledger.$inferInsert;
type Seen = Pick<
  typeof ledger.$inferSelect,
  'id' | 'seq' | 'kind' | 'version' | 'at' | 'by' | 'body' | 'hash' | 'receivedAt' | 'known'
>;

const draftsTogether = 500; // of posts that wait for the same chain: as many as one post may hold

type Post = { writer: Writer; drafts: readonly Draft[]; clock: Clock; asking: Asking };
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
  return db.drizzle.transaction((tx) => appendIn(tx, writer, drafts, clock, admit));
}

/**
 * `append`, with what has to be known first read in the same transaction, behind the lock: whoever is admitted is
 * admitted by the book as it is when the entry is written. Posts that come meanwhile are written together after it,
 * in the order in which they came; `soFar` then holds what was written before a draft for others too.
 */
export async function appendAsked(
  db: Db,
  writer: Writer,
  drafts: readonly Draft[],
  clock: Clock,
  asking: Asking,
): Promise<Receipt[]> {
  if (drafts.length === 0) return [];
  const post = { writer, drafts, clock, asking };
  return together.add(db, writer.site, post, (posts) =>
    db.drizzle.transaction((tx) => writePosts(tx, writer.site, posts)),
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
  try {
    await db.drizzle.transaction(async (tx) => {
      await tx.insert(head).values({ site, seq: 0, hash: chainStart });
      receipts = await appendIn(tx, { ...writer, site }, drafts, clock, () => []);
      if (receipts.some(({ status }) => status === 'refused')) tx.rollback();
    });
    return { site, receipts };
  } catch (error) {
    if (receipts.some(({ status }) => status === 'refused')) return { site: null, receipts };
    throw error;
  }
}

/** `append` inside a transaction that the caller has begun: what was read in it and what is written are one. */
export async function appendIn(
  tx: Tx,
  writer: Writer,
  drafts: readonly Draft[],
  clock: Clock,
  admit: Admit,
): Promise<Receipt[]> {
  const asking = async () => admit;
  const [receipts = []] = await writePosts(tx, writer.site, [{ writer, drafts, clock, asking }]);
  return receipts;
}

/** Posts to one chain, one after another in one transaction. */
async function writePosts(tx: Tx, site: string, posts: readonly Post[]): Promise<Receipt[][]> {
  // One connection: sent together and done in this order, so that all is read behind the lock.
  const locked = lockAndLookUp(
    tx,
    site,
    posts.flatMap(({ drafts }) => drafts),
  );
  const asked = Promise.all(posts.map(({ asking }) => asking(tx)));
  const [[end, seen], admits] = await Promise.all([locked, asked]);
  const pen = new Pen(end, seen);
  const receipts = posts.map(({ writer, drafts, clock }, n) => {
    const hand = { writer, receivedAt: isoOf(clock()), admit: admits[n] ?? (() => []) };
    return drafts.map((draft) => pen.take(draft, hand));
  });
  if (pen.rows.length === 0) return receipts;
  const moved = tx
    .update(head)
    .set({ seq: pen.end.seq, hash: pen.end.hash })
    .where(eq(head.site, site))
    .prepare('move_head')
    .execute();
  await Promise.all([insertion(tx, pen.rows), moved]);
  await keepLives(tx, site, pen.entries);
  return receipts;
}

/**
 * Any number of rows as one text: the same statement for one figure and for a night, so that it is kept planned, and
 * no parameter for each column of each row.
 */
function insertion(tx: Tx, rows: Row[]): Promise<unknown> {
  return tx
    .insert(ledger)
    .select(sql`select * from json_to_recordset(${JSON.stringify(rows.map(inColumns))}::json) as row(
      site uuid, seq bigint, id uuid, kind text, version integer, at text, entered_at text, received_at text,
      by uuid, known text, device uuid, body text, prev text, hash text,
      at_ms bigint, subject uuid, target uuid, day text)`)
    .prepare('insert_entries')
    .execute();
}

/** A row by the names of its columns. */
const inColumns = ({ enteredAt, receivedAt, atMs, ...row }: Row): Record<string, unknown> => ({
  ...row,
  entered_at: enteredAt,
  received_at: receivedAt,
  at_ms: atMs,
});

/** Locks the end of the chain, then looks for the ids: sent together, the second sees all that the lock waited for. */
async function lockAndLookUp(
  tx: Tx,
  site: string,
  drafts: readonly Draft[],
): Promise<[{ seq: number; hash: string }, Map<string, Seen>]> {
  const typed = drafts.map(({ id }) => (typeof id === 'string' ? id.toLowerCase() : ''));
  const ids = [...new Set(typed)].filter((id) => uuid.test(id));
  const locked = tx
    .select()
    .from(head)
    .where(eq(head.site, site))
    .for('update')
    .prepare('lock_head')
    .execute();
  const looked = tx
    .select({
      id: ledger.id,
      seq: ledger.seq,
      kind: ledger.kind,
      version: ledger.version,
      at: ledger.at,
      by: ledger.by,
      body: ledger.body,
      hash: ledger.hash,
      receivedAt: ledger.receivedAt,
      known: ledger.known,
    })
    .from(ledger)
    .where(and(eq(ledger.site, site), sql`${ledger.id} = any(${`{${ids.join(',')}}`}::uuid[])`));
  const [[end], seen] = await Promise.all([locked, looked.prepare('find_entries').execute()]);
  if (end === undefined) throw new Error(`append: no site ${site} in this book`);
  return [end, new Map(seen.map((row) => [row.id, row]))];
}

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

const schemas = new Map<Kind, ReturnType<typeof draftSchema>>();
function schemaOf(kind: Kind): ReturnType<typeof draftSchema> {
  const schema = schemas.get(kind) ?? draftSchema(kind);
  schemas.set(kind, schema);
  return schema;
}

const problem = (field: string, name: string, remedy: string, values: Problem['values'] = {}): Problem => ({
  field,
  problem: name,
  remedy,
  values,
});

/** Who holds the pen for a draft. */
type Hand = { writer: Writer; receivedAt: string; admit: Admit };

/** Writes drafts one after another behind the end of a chain; what it wrote is in `rows` and `entries`. */
class Pen {
  readonly rows: Row[] = [];
  readonly entries: Entry[] = [];
  end: { seq: number; hash: string };
  private readonly seen: Map<string, Seen>;

  constructor(end: { seq: number; hash: string }, seen: Map<string, Seen>) {
    this.end = { seq: end.seq, hash: end.hash };
    this.seen = seen;
  }

  take(sent: Draft, hand: Hand): Receipt {
    const refused = (problems: Problem[]): Receipt => ({ id: sent.id, status: 'refused', problems });
    const kind: unknown = sent.kind; // as it came: nothing has parsed it yet
    if (!isKind(kind)) {
      const typed = typeof kind === 'string' ? kind.slice(0, 60) : typeof kind;
      return refused([problem('kind', 'unknown_kind', 'reload', { typed })]);
    }
    const parsed = schemaOf(sent.kind).safeParse(sent);
    if (!parsed.success) return refused(problemsOf(parsed.error, sent));
    const draft = withLowerCaseIds(parsed.data);
    const body = textOf(draft.body);
    if (body === null) return refused([problem('body', 'unreadable_sign', 'type_again')]);
    const before = this.seen.get(draft.id);
    if (before !== undefined) {
      if (!isSame(before, draft, body)) return refused([problem('id', 'id_taken', 'send_as_new')]);
      return { ...receiptOf(before), id: sent.id, status: 'already' };
    }
    const problems = hand.admit(draft, this.entries);
    if (problems.length > 0) return refused(problems);
    return { ...receiptOf(this.write(draft, body, hand)), id: sent.id, status: 'written' };
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

/** UUIDs are one id in either case; the chain covers them in lower case. */
const withLowerCaseIds = (draft: Draft): Draft => ({
  ...draft,
  id: draft.id.toLowerCase(),
  by: draft.by.toLowerCase(),
});

/** The body's canonical text; null where a text in it is not whole (half of a surrogate pair). */
function textOf(body: object): string | null {
  try {
    return canonicalText(body);
  } catch {
    return null;
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
