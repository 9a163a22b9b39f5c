import { createTranslator } from 'use-intl/core';
import { BackupRefused } from '#db/backup/refused.ts';
import type { Db } from '#db/connect.ts';
import { type Language, messages } from '#shared/words/messages.ts';
import { backupRefusalWords } from './backup/words.ts';
import { type Io, terminal } from './io.ts';
import { progress } from './progress.ts';
import { walkFile } from './verify/file.ts';
import { compareNoted, type Noted, notedHeads } from './verify/noted.ts';
import { sitesOf, type Walked, walkSite } from './verify/walk.ts';
import { languageOf, withBook } from './with-book.ts';

const wordsOf = (locale: Language) =>
  createTranslator({ locale, messages: messages[locale], namespace: 'database.verify' });
type Words = ReturnType<typeof wordsOf>;

type Asked = { file: string | null; heads: Noted[] };

/**
 * `holdproof verify [FILE] [--head …]`: walks each site's chain, of the book or of a backup, and names the first
 * entry that does not fit, how, and when it says that it came. `--head`: ends of the chain noted earlier.
 * @returns 0 every chain fits and has the noted ends, 1 something does not, 3 not walked
 */
export async function runVerify(args: string[], io: Io = terminal): Promise<number> {
  const locale = languageOf(io.env);
  const t = wordsOf(locale);
  const asked = await askedBy(args, io, t);
  if (asked === null) return 3;
  if (asked.file !== null) return verifyFile(asked.file, asked.heads, io, locale);
  return withBook(io, ({ sql }) => verifyBook(sql, asked.heads, io, t));
}

async function askedBy(args: readonly string[], io: Io, t: Words): Promise<Asked | null> {
  const asked: Asked = { file: null, heads: [] };
  for (let n = 0; n < args.length; n += 1) {
    const arg = args[n] ?? '';
    if (arg === '--head') {
      n += 1;
      const typed = args[n] ?? '';
      const heads = await notedHeads(typed);
      if (heads === null) {
        io.err(t('noted.unread', { typed }));
        io.err(t('use'));
        return null;
      }
      asked.heads.push(...heads);
    } else if (arg.startsWith('-') || asked.file !== null) {
      io.err(t('use'));
      return null;
    } else asked.file = arg;
  }
  return asked;
}

async function verifyBook(sql: Db['sql'], noted: readonly Noted[], io: Io, t: Words): Promise<number> {
  const sites = await sitesOf(sql);
  if (sites.length === 0) io.out(t('empty'));
  const heads = bySite(noted, sites, io, t);
  if (heads === null) return 3;
  let wrong = heads.strangers;
  for (const site of sites) {
    const bar = progress(io, (done, count) => t('walking', { site, done, count }));
    const walked = await walkSite(sql, site, bar.tell);
    bar.end();
    say(site, walked, io, t);
    let bad = walked.misfit === null ? 0 : 1;
    for (const head of heads.of(site)) {
      const finding = await compareNoted(sql, site, head);
      const [found] = await sql<{ hash: string }[]>`
        select hash from ledger where site = ${site} and seq = ${head.seq}`;
      const values = { seq: head.seq, hash: head.hash };
      if (finding === 'same') io.out(t('noted.same', values));
      else if (finding === 'cut') io.out(t('noted.cut', { ...values, found: walked.end.seq }));
      else io.out(t('noted.differs', { ...values, found: found?.hash ?? '–' }));
      if (finding !== 'same') bad = 1;
    }
    wrong += bad;
  }
  sayLimits(noted, io, t);
  return wrong === 0 ? 0 : 1;
}

/** Which noted ends belong to which site; null = it cannot be told, and was said. */
function bySite(noted: readonly Noted[], sites: readonly string[], io: Io, t: Words) {
  if (sites.length > 1 && noted.some(({ site }) => site === null)) {
    io.err(t('noted.which_site'));
    return null;
  }
  const strangers = noted.filter(({ site }) => site !== null && !sites.includes(site));
  for (const { site, seq, hash } of strangers) io.out(t('noted.other_site', { site: site ?? '', seq, hash }));
  return {
    strangers: strangers.length,
    of: (site: string) => noted.filter((head) => head.site === null || head.site === site),
  };
}

/** One line a site; of a chain that does not fit also when, and how far it does. */
function say(site: string, walked: Walked, io: Io, t: Words): void {
  const { misfit, end, count, hash } = walked;
  if (misfit === null) {
    io.out(t('whole', { site, count, hash }));
    sayErased(walked, io, t);
    return;
  }
  const how = t(`how.${misfit.how}`, misfit.values as never);
  io.out(t('broken', { site, seq: misfit.seq, how }));
  if (misfit.receivedAt !== null) io.out(t('when', { at: misfit.receivedAt }));
  io.out(end.receivedAt === null ? t('first_bad') : t('last_good', { seq: end.seq, at: end.receivedAt }));
  sayErased(walked, io, t);
}

/** What was erased is always said: a reader must see that an entry's text is gone, and who says that it had to go. */
function sayErased({ erased }: Walked, io: Io, t: Words): void {
  for (const { sheets, ...told } of erased) io.out(t('erased', { ...told, sheets: sheets.length }));
  if (erased.length > 0) io.out(t('erased_means'));
}

function sayLimits(noted: readonly Noted[], io: Io, t: Words): void {
  if (noted.length === 0) io.out(t('noted.none'));
  else io.out(t('noted.after', { seq: Math.max(...noted.map(({ seq }) => seq)) }));
}

async function verifyFile(file: string, noted: readonly Noted[], io: Io, locale: Language): Promise<number> {
  const t = wordsOf(locale);
  const bar = progress(io, (done, count) => t('file_walking', { done, count }));
  try {
    const { manifest, count, sites, texts, noted: findings } = await walkFile(file, noted, bar.tell);
    bar.end();
    const heads = bySite(noted, [...sites.keys()], io, t);
    if (heads === null) return 3;
    io.out(t('file_whole', { at: manifest.written_at, program: manifest.program, lines: count + 2 }));
    for (const [site, walked] of sites) say(site, walked, io, t);
    if (texts > 0) io.out(t('texts', { count: texts }));
    for (const { head, finding, found, end } of findings) {
      const values = { seq: head.seq, hash: head.hash };
      if (finding === 'same') io.out(t('noted.same', values));
      else if (finding === 'cut') io.out(t('noted.cut', { ...values, found: end }));
      else io.out(t('noted.differs', { ...values, found }));
    }
    sayLimits(noted, io, t);
    const wrong =
      heads.strangers > 0 ||
      [...sites.values()].some(({ misfit }) => misfit !== null) ||
      findings.some(({ finding }) => finding !== 'same');
    return wrong ? 1 : 0;
  } catch (error) {
    bar.end();
    if (!(error instanceof BackupRefused)) throw error;
    for (const line of backupRefusalWords(locale, error)) io.err(line);
    return 3;
  }
}
