import { parseArgs } from 'node:util';
import { v7 } from 'uuid';
import { commandLine } from '#db/erase/erase.ts';
import { yearsKept } from '#db/erase/plan.ts';
import { append } from '#db/ledger.ts';
import { leastKept } from '#lib/limits/keeping.ts';
import type { DraftOf } from '#shared/entries/entry.ts';
import { versions } from '#shared/entries/versions.ts';
import { isoOf } from '#shared/time.ts';
import { decider, eraseWords, siteAsked } from './erase/asked.ts';
import { type Io, terminal } from './io.ts';
import { languageOf, withBook } from './with-book.ts';

type Asked = {
  years: number | null;
  because: string | undefined;
  by: string | undefined;
  site: string | undefined;
};

/**
 * `holdproof retention [--years N --because WORDS [--by NAME]] [--site ID]`: how long records are kept here, or sets
 * it by an entry. Nothing goes by itself: `erase` does it, when it is asked to.
 * @returns 0 said or set, 1 refused, 3 asked wrongly or no book
 */
export async function runRetention(args: string[], io: Io = terminal, clock = Date.now): Promise<number> {
  const t = eraseWords(languageOf(io.env));
  const asked = askedBy(args);
  if (asked === null) {
    io.err(t('retention.use'));
    return 3;
  }
  const { years, because } = asked;
  const { years: least, section } = leastKept;
  if (years !== null && years < least) {
    io.err(t('retention.too_short', { years, least, section }));
    io.err(t('retention.too_short_remedy', { least }));
    return 1;
  }
  if (years !== null && !because?.trim()) {
    io.err(t('retention.why'));
    return 3;
  }
  return withBook(io, async (db) => {
    const site = await siteAsked(db, asked.site, io, t);
    if (site === null) return 3;
    if (years === null || because === undefined) {
      const now = await yearsKept(db, site);
      const set = now.because === null ? null : { years: now.years, because: now.because };
      io.out(set ? t('kept', set) : t('kept_least', { years: now.years, section }));
      return 0;
    }
    const by = await decider(db, site, asked.by, io, t);
    if (by === null) return 3;
    const at = isoOf(clock());
    const draft: DraftOf<'retention'> = {
      id: v7({ msecs: clock() }),
      kind: 'retention',
      version: versions.retention,
      at,
      entered_at: at,
      by: by.person,
      body: { years, because: because.trim() },
    };
    const writer = { site, device: commandLine, knownOf: () => 'command_line' as const };
    const [receipt] = await append(db, writer, [draft], clock);
    if (receipt?.status !== 'written') {
      io.err(t('retention.use')); // more years, or more words, than an entry takes
      return 3;
    }
    io.out(t('retention.set', { seq: receipt.seq, years, because: because.trim() }));
    return 0;
  });
}

function askedBy(args: string[]): Asked | null {
  const text = { type: 'string' } as const;
  try {
    const options = { years: text, because: text, by: text, site: text };
    const { years, ...said } = parseArgs({ args, options, strict: true }).values;
    if (years !== undefined && !/^\d{1,3}$/.test(years)) return null;
    const { because, by, site } = said;
    return { years: years === undefined ? null : Number(years), because, by, site };
  } catch {
    return null;
  }
}
