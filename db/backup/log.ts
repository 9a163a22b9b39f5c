import { appendFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod';
import { backupFolder } from './folder.ts';

/**
 * What came of each backup and each tested restore, one JSON line each, in a file beside the backups: it can be
 * written and read when the database cannot.
 */
const ranSchema = z.object({
  at: z.string(),
  what: z.enum(['backup', 'restore_test']),
  ok: z.boolean(),
  nightly: z.boolean(),
  file: z.string(),
  /** Of a backup: of the first site; the night is counted in it. */
  zone: z.string().nullable(),
  entries: z.int().nullable(),
  bytes: z.int().nullable(),
  sha256: z.string().nullable(),
  took_ms: z.int(),
  /** What went wrong, as the machine says it. */
  detail: z.string().nullable(),
});

export type Ran = z.infer<typeof ranSchema>;

const logFile = (env: NodeJS.ProcessEnv): string => join(backupFolder(env), 'log.jsonl');

/** Notes a run. @throws the file system's fault, when the folder cannot be written */
export function noteRun(env: NodeJS.ProcessEnv, ran: Ran): void {
  mkdirSync(backupFolder(env), { recursive: true });
  appendFileSync(logFile(env), `${JSON.stringify(ran)}\n`, { mode: 0o600 });
}

/** All runs, oldest first. A line that was cut by a fault is passed over. */
export function runs(env: NodeJS.ProcessEnv): Ran[] {
  const file = logFile(env);
  if (!existsSync(/* turbopackIgnore: true */ file)) return [];
  return readFileSync(/* turbopackIgnore: true */ file, 'utf8')
    .split('\n')
    .flatMap((line) => {
      try {
        const ran = ranSchema.safeParse(JSON.parse(line));
        return ran.success ? [ran.data] : [];
      } catch {
        return [];
      }
    });
}

/** The last backup that succeeded, what failed since, and the last restore that was tried. */
export type BackupState = { last: Ran | null; failed: Ran | null; tested: Ran | null };

export function backupState(all: readonly Ran[]): BackupState {
  const last = all.findLast(({ what, ok }) => what === 'backup' && ok) ?? null;
  const newest = all.findLast(({ what }) => what === 'backup') ?? null;
  return {
    last,
    failed: newest !== null && !newest.ok ? newest : null,
    tested: all.findLast(({ what }) => what === 'restore_test') ?? null,
  };
}
