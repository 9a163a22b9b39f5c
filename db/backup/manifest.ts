import * as z from 'zod';
import { BackupRefused } from './refused.ts';
import { tableNames } from './tables.ts';

/** The format of the lines; a change that an older program could not read would be the next number. */
export const backupFormat = { name: 'holdproof-backup', number: 1 } as const;
export const formatWords = `${backupFormat.name}/${backupFormat.number}`;

/** The first line of a backup: what it is, from when and of whom, and how much follows. */
export const manifestSchema = z.object({
  format: z.string(),
  program: z.string(),
  /** Version of the tables: how many migrations they have seen, and when (ms) the last one was made. */
  schema: z.object({ number: z.int().positive(), made_ms: z.int() }),
  written_at: z.string(),
  sites: z.array(z.object({ site: z.string(), name: z.string(), zone: z.string() })),
  heads: z.array(z.object({ site: z.uuid(), seq: z.int().nonnegative(), hash: z.string().length(64) })),
  counts: z.partialRecord(z.enum(tableNames), z.int().nonnegative()),
});

export type Manifest = z.infer<typeof manifestSchema>;

/** The last line: how many lines stand before it, and the SHA-256 of their bytes, line feeds included. */
export const endSchema = z.object({ end: z.object({ lines: z.int(), sha256: z.string() }) });

/**
 * Reads a first line.
 * @param known the newest version of the tables that this program knows
 * @throws BackupRefused `not_a_backup`, `an_export`, `newer_format`, `newer_schema`, `damaged`
 */
export function manifestOf(line: string, known: number): Manifest {
  const said = parsed(line);
  const format = (said as { format?: unknown } | null)?.format;
  if (typeof format !== 'string') throw new BackupRefused('not_a_backup');
  const [name, number] = format.split('/');
  if (name === 'holdproof-export') throw new BackupRefused('an_export');
  if (name !== backupFormat.name) throw new BackupRefused('not_a_backup');
  if (Number(number) > backupFormat.number) {
    throw new BackupRefused('newer_format', { found: String(number), known: backupFormat.number });
  }
  const schema = (said as { schema?: { number?: unknown } }).schema?.number;
  if (typeof schema === 'number' && schema > known) {
    throw new BackupRefused('newer_schema', { found: schema, known });
  }
  const manifest = manifestSchema.safeParse(said);
  if (!manifest.success) throw new BackupRefused('damaged', { line: 1 });
  return manifest.data;
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}
