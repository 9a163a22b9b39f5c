import { parseArgs } from 'node:util';
import { backupFolder, nightlies } from '#db/backup/folder.ts';
import type { Db } from '#db/connect.ts';
import { erase } from '#db/erase/erase.ts';
import { asOwner } from '#db/erase/owner.ts';
import { type Plan, planErasure } from '#db/erase/plan.ts';
import { EraseRefused } from '#db/erase/refused.ts';
import { refuseOpen } from '#db/erase/still-open.ts';
import { latest } from '#db/load.ts';
import { BookRefused } from '#db/refused.ts';
import { refusalWords } from '#db/words.ts';
import { leastKept } from '#lib/limits/keeping.ts';
import { localDate } from '#shared/time.ts';
import { decider, type EraseWords, eraseWords, siteAsked } from './erase/asked.ts';
import { type Io, terminal } from './io.ts';
import { progress } from './progress.ts';
import { languageOf, withBook } from './with-book.ts';

type Asked = { before: string; yes: boolean; by: string | undefined; site: string | undefined };

/**
 * `holdproof erase --before DAY [--yes] [--by NAME] [--site ID]`: at the end of retention, what would go and under
 * which digest; with `--yes` it goes, and an entry says so. By the role that owns the tables, and by nobody else.
 * @returns 0 said or done, 1 refused with nothing changed, 3 asked wrongly, no owner's role, or no book
 */
export async function runErase(args: string[], io: Io = terminal, clock = Date.now): Promise<number> {
  const t = eraseWords(languageOf(io.env));
  const asked = askedBy(args);
  if (asked === null) {
    io.err(t('use'));
    return 3;
  }
  return withBook(io, async (db) => {
    const site = await siteAsked(db, asked.site, io, t);
    const by = site === null ? null : await decider(db, site, asked.by, io, t);
    if (site === null || by === null) return 3;
    const owner = asked.yes ? await ownerOf(db, io) : null;
    if (asked.yes && owner === null) return 3;
    try {
      const plan = await planned(db, site, asked.before, clock(), io, t);
      if (owner === null) {
        for (const line of [t('dry'), t('first_backup')]) io.out(line);
        return 0;
      }
      const bar = progress(io, (done, count) => t('erasing', { done, count }));
      const { seq, hash } = await erase(owner, plan, by.person, clock, bar.tell).finally(bar.end);
      io.out(t('done', { seq, hash, by: by.name }));
      io.out(t('done_stays'));
      const folder = backupFolder(io.env);
      io.out(t('backups', { folder, count: nightlies(folder).length }));
      return 0;
    } catch (error) {
      if (!(error instanceof EraseRefused)) throw error;
      io.err(t(`refused.${error.key}.problem`, error.values as never));
      io.err(t(`refused.${error.key}.remedy`, error.values as never));
      return 1;
    } finally {
      await owner?.close();
    }
  });
}

function askedBy(args: string[]): Asked | null {
  const text = { type: 'string' } as const;
  try {
    const options = { before: text, by: text, site: text, yes: { type: 'boolean' } as const };
    const { before, by, site, yes = false } = parseArgs({ args, options, strict: true }).values;
    return localDate.safeParse(before).success ? { before: before ?? '', by, site, yes } : null;
  } catch {
    return null;
  }
}

/** Said before anything is worked out: whoever may not do it need not wait for it. */
async function ownerOf(db: Db, io: Io): Promise<Db | null> {
  try {
    return await asOwner(db, io.env);
  } catch (error) {
    if (!(error instanceof BookRefused)) throw error;
    for (const line of refusalWords(languageOf(io.env), error)) io.err(line);
    return null;
  }
}

/** Works out what would go and says it. */
async function planned(db: Db, site: string, before: string, now: number, io: Io, t: EraseWords) {
  const plan = await planErasure(db, site, before, now);
  const bar = progress(io, (done, count) => t('planning', { done, count }));
  await refuseOpen(db, plan, now, bar.tell).finally(bar.end);
  const name = (await latest(db, site, 'site'))?.body.name ?? site;
  for (const line of linesOf(plan, name, t)) io.out(line);
  return plan;
}

function linesOf(plan: Plan, name: string, t: EraseWords): string[] {
  const { count, bytes, days, from, to, sheets, digest, years, because, stays } = plan;
  const size = bytes < 1_000_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
  return [
    t('goes', { name, count, days, from, to, size, sheets: sheets.length }),
    t('digest', { digest }),
    because === null ? t('kept_least', { years, section: leastKept.section }) : t('kept', { years, because }),
    ...(stays.bound > 0 ? [t('stays_bound', { count: stays.bound })] : []),
    ...(stays.lasting > 0 ? [t('stays_lasting', { count: stays.lasting })] : []),
  ];
}
