/**
 * What a backup holds: the tables that are truth, each with the columns that are written, in the order of its rows.
 * What is derived (the ledger's index columns, the batches' lives) is left out and made anew by a restore, so a file
 * of an older program fits into newer tables. A member that is null is not written, so a nullable column that came
 * later changes no older line. Not in it: nothing that could be read as a secret; secrets and devices' tokens are
 * there as their hashes, and the key under which device cookies are sealed as it is: keep a backup as you keep a key.
 */
type Type = 'text' | 'whole' | 'truth';

export type Table = {
  /** Column → type; '?' = may be null. */
  columns: Readonly<Record<string, Type | `${Type}?`>>;
  key: readonly string[];
};

export const tables = {
  ledger: {
    key: ['site', 'seq'],
    columns: {
      site: 'text',
      seq: 'whole',
      id: 'text',
      kind: 'text',
      version: 'whole',
      at: 'text',
      entered_at: 'text',
      received_at: 'text',
      by: 'text',
      known: 'text',
      device: 'text',
      body: 'text',
      prev: 'text',
      hash: 'text',
    },
  },
  signed_text: { key: ['site', 'hash'], columns: { site: 'text', hash: 'text', text: 'text' } },
  device: {
    key: ['site', 'device'],
    columns: {
      site: 'text',
      device: 'text',
      name: 'text',
      token_hash: 'text',
      enrolled_at: 'text',
      revoked_at: 'text?',
    },
  },
  device_clock: {
    key: ['site', 'device', 'at_ms'],
    columns: { site: 'text', device: 'text', at_ms: 'whole', off_ms: 'whole' },
  },
  secret: {
    key: ['site', 'person'],
    columns: {
      site: 'text',
      person: 'text',
      hash: 'text?',
      set_at: 'text?',
      tries: 'whole',
      shut_until_ms: 'whole?',
      must_set: 'truth',
    },
  },
  sign_in: {
    key: ['site', 'id'],
    columns: {
      site: 'text',
      id: 'text',
      device: 'text',
      person: 'text',
      how: 'text',
      since_ms: 'whole',
      last_seen_ms: 'whole',
      ended_ms: 'whole?',
    },
  },
  seal: { key: ['site'], columns: { site: 'text', key: 'text' } },
} as const satisfies Record<string, Table>;

export type TableName = keyof typeof tables;
export const tableNames = Object.keys(tables) as TableName[];

export type Cell = string | number | boolean | null;
export type BackupRow = Record<string, Cell>;

/** A row as the database gives it, with whole numbers as numbers and its columns in the order of the table. */
export function rowFrom(table: TableName, raw: Record<string, unknown>): BackupRow {
  const row: BackupRow = {};
  for (const [column, type] of Object.entries<string>(tables[table].columns)) {
    const value = raw[column];
    if (value === null || value === undefined) continue;
    row[column] = type.startsWith('whole') ? Number(value) : (value as Cell);
  }
  return row;
}

const kinds = { text: 'string', whole: 'number', truth: 'boolean' } as const;

/** Whether a value read from a file is a row of this table, and nothing more. */
export function isRow(table: TableName, value: unknown): value is BackupRow {
  if (typeof value !== 'object' || value === null) return false;
  const columns: Record<string, string> = tables[table].columns;
  if (Object.keys(value).some((column) => columns[column] === undefined)) return false;
  return Object.entries(columns).every(([column, type]) => {
    const cell = (value as Record<string, unknown>)[column];
    if (cell === undefined) return type.endsWith('?');
    return (
      typeof cell === kinds[type.replace('?', '') as keyof typeof kinds] &&
      (typeof cell !== 'number' || Number.isSafeInteger(cell))
    );
  });
}
