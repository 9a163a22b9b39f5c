import { createTranslator } from 'use-intl/core';
import { messages } from '#shared/words/messages.ts';
import { type Io, terminal } from './io.ts';
import { type Misfit, sitesOf, walkSite } from './verify/walk.ts';
import { languageOf, withBook } from './with-book.ts';

/**
 * `holdproof verify`: walks each site's chain and names the first entry that does not fit and how.
 * @returns 0 every chain fits, 1 something does not, 3 the book was not opened
 */
export async function runVerify(_args: string[], io: Io = terminal): Promise<number> {
  const locale = languageOf(io.env);
  const t = createTranslator({ locale, messages: messages[locale], namespace: 'database.verify' });
  const how = ({ how: key, values }: Misfit) => t(`how.${key}`, values as never);
  return withBook(io, async ({ sql }) => {
    const sites = await sitesOf(sql);
    if (sites.length === 0) io.out(t('empty'));
    let broken = 0;
    for (const site of sites) {
      const walked = await walkSite(sql, site, (done, count) => io.err(t('walking', { site, done, count })));
      if (walked.misfit === null) {
        io.out(t('whole', { site, count: walked.count, hash: walked.hash }));
        continue;
      }
      broken += 1;
      io.out(t('broken', { site, seq: walked.misfit.seq, how: how(walked.misfit) }));
    }
    io.out(t('limits'));
    return broken === 0 ? 0 : 1;
  });
}
