import { existsSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { dataFolder } from '#db/embedded/place.ts';
import { inZone } from '#shared/time.ts';

/** Where the nightly backups and their log lie: HOLDPROOF_BACKUPS, else below the data folder. */
export const backupFolder = (env: NodeJS.ProcessEnv): string =>
  env.HOLDPROOF_BACKUPS
    ? resolve(/* turbopackIgnore: true */ env.HOLDPROOF_BACKUPS)
    : join(dataFolder(env), 'backups');

const shape = /^holdproof-(\d{4}-\d{2}-\d{2})T(\d{2})(\d{2})(\d{2})Z\.jsonl\.gz$/;

/** The name of a nightly backup made at `ms`: "holdproof-2026-10-17T093000Z.jsonl.gz" (UTC). */
export const nightlyName = (ms: number): string =>
  `holdproof-${new Date(ms).toISOString().slice(0, 19).replaceAll(':', '')}Z.jsonl.gz`;

/** A nightly backup by its name; null = another file, which is none of ours to remove. */
export function nightlyOf(name: string): { name: string; ms: number } | null {
  const found = shape.exec(name);
  if (found === null) return null;
  const [, day, hour, minute, second] = found;
  return { name, ms: Date.parse(`${day}T${hour}:${minute}:${second}Z`) };
}

export const nightlies = (folder: string): string[] =>
  existsSync(/* turbopackIgnore: true */ folder)
    ? readdirSync(/* turbopackIgnore: true */ folder).filter((name) => nightlyOf(name) !== null)
    : [];

/** How many are kept: the last of each of 7 days, of 4 weeks, of 12 months that have one. House choice. */
export const kept = { days: 7, weeks: 4, months: 12 } as const;

/**
 * Which nightly backups may go: of each local day, week (from Monday) and month only the last one counts, and of
 * these the newest 7, 4 and 12 stay. The newest of all always stays; files with other names are never named.
 */
export function removable(names: readonly string[], zone: string): string[] {
  const all = names.flatMap((name) => nightlyOf(name) ?? []).sort((a, b) => b.ms - a.ms);
  const stays = new Set<string>();
  const keepLastOf = (period: (ms: number) => string, most: number): void => {
    const seen = new Set<string>();
    for (const { name, ms } of all) {
      const key = period(ms);
      if (seen.has(key) || seen.size >= most) continue;
      seen.add(key);
      stays.add(name);
    }
  };
  const day = (ms: number): string => inZone(ms, zone).slice(0, 10);
  keepLastOf(day, kept.days);
  keepLastOf((ms) => mondayOf(day(ms)), kept.weeks);
  keepLastOf((ms) => day(ms).slice(0, 7), kept.months);
  return all.map(({ name }) => name).filter((name) => !stays.has(name));
}

function mondayOf(day: string): string {
  const noon = Date.parse(`${day}T12:00:00Z`);
  const fromMonday = (new Date(noon).getUTCDay() + 6) % 7;
  return new Date(noon - fromMonday * 86_400_000).toISOString().slice(0, 10);
}
