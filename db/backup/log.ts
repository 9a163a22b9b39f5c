import { appendFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import * as z from 'zod';
import { dataFolder } from '#db/embedded/place.ts';
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

/** Beside the backups; and in the data folder what could not be written there, that it could not above all. */
const logFiles = (env: NodeJS.ProcessEnv): [string, string] => [
  join(backupFolder(env), 'log.jsonl'),
  join(dataFolder(env), 'backup-incidents.jsonl'),
];

/**
 * Notes a run: beside the backups or, where their folder cannot be written, in the data folder.
 * @throws the file system's fault, when neither can be written
 */
export function noteRun(env: NodeJS.ProcessEnv, ran: Ran): void {
  const [beside, instead] = logFiles(env);
  try {
    addLine(beside, ran);
  } catch {
    addLine(instead, ran);
  }
}

function addLine(file: string, ran: Ran): void {
  mkdirSync(dirname(file), { recursive: true });
  appendFileSync(file, `${JSON.stringify(ran)}\n`, { mode: 0o600 });
}

/** All runs, oldest first. A line that was cut by a fault is passed over. */
export const runs = (env: NodeJS.ProcessEnv): Ran[] =>
  logFiles(env)
    .flatMap(linesOf)
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at));

function linesOf(file: string): Ran[] {
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

/**
 * The last backup that succeeded, what failed since, and the last restore that was tried. `ahead`: a run dated later
 * than now, from a time when the clock was wrong; it counts for nothing else, so that backups go on.
 */
export type BackupState = { last: Ran | null; failed: Ran | null; tested: Ran | null; ahead: Ran | null };

const clockSlackMs = 60_000;

/** @param now ms since 1970 */
export function backupState(all: readonly Ran[], now: number): BackupState {
  const isAhead = ({ at }: Ran): boolean => Date.parse(at) > now + clockSlackMs;
  const past = all.filter((ran) => !isAhead(ran));
  const newest = past.findLast(({ what }) => what === 'backup') ?? null;
  return {
    last: past.findLast(({ what, ok }) => what === 'backup' && ok) ?? null,
    failed: newest !== null && !newest.ok ? newest : null,
    tested: past.findLast(({ what }) => what === 'restore_test') ?? null,
    ahead: all.findLast(isAhead) ?? null,
  };
}

const incidentDays = 30; // a month's reading. House choice

/** What did not succeed lately, newest first, also when a later run did: each with its time and its cause. */
export const incidents = (all: readonly Ran[], now: number): Ran[] =>
  all.filter(({ ok, at }) => !ok && now - Date.parse(at) < incidentDays * 86_400_000).reverse();
