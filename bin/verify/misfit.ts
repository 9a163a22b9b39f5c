/**
 * The checker shares nothing with the writer but the layout of the bytes (shared/envelope.ts): its own SQL, its own
 * reading of the columns. So it can disagree with the writer.
 */
export type EntryRow = {
  site: string;
  seq: string | number;
  id: string;
  kind: string;
  version: number;
  at: string;
  entered_at: string;
  received_at: string;
  by: string;
  known: string;
  device: string;
  body: string;
  prev: string;
  hash: string;
};

/** With the columns that the database derives from the text for its indexes. */
export type Row = EntryRow & {
  seq: string;
  at_ms: string;
  subject: string | null;
  target: string | null;
  day: string | null;
};

export type How =
  | 'seq'
  | 'prev'
  | 'hash'
  | 'body'
  | 'derived'
  | 'head_row'
  | 'no_head'
  | 'text_missing'
  | 'text_differs'
  | 'signed_head'
  | 'still_there'
  | 'erased_unsaid'
  | 'erased_lasting'
  | 'erased_early'
  | 'erasure_unread'
  | 'erasure_differs'
  | 'text_still_there'
  | 'life';

/**
 * The first entry that does not fit, and how. Words: `database.verify.how.<how>`. `receivedAt`: when it came into
 * the book as it says of itself (a row that was edited may lie); null = there is no such row.
 */
export type Misfit = {
  seq: number;
  how: How;
  values: Record<string, string | number>;
  receivedAt: string | null;
};

export const misfitAt =
  (row: EntryRow) =>
  (how: How, values: Misfit['values'] = {}): Misfit => ({
    seq: Number(row.seq),
    how,
    values,
    receivedAt: row.received_at,
  });
