import { and, eq, inArray, sql } from 'drizzle-orm';
import { v7 } from 'uuid';
import type { Db } from '#db/connect.ts';
import { appendIn, type Clock } from '#db/ledger.ts';
import { batchLife, head, signedText } from '#db/schema.ts';
import { transact } from '#db/transact.ts';
import type { DraftOf } from '#shared/entries/entry.ts';
import { versions } from '#shared/entries/versions.ts';
import { isoOf } from '#shared/time.ts';
import { type Plan, planErasure } from './plan.ts';
import { EraseRefused } from './refused.ts';

type Progress = (done: number, count: number) => void;

/** The entry that says what went, and the end of the chain behind it. */
export type Erasure = { id: string; seq: number; hash: string };

/** What writes from the command line is no device that was let in. */
export const commandLine = '00000000-0000-0000-0000-000000000000';

const rowsAtOnce = 2000;

/**
 * Erases what was planned, in one transaction: the entry that says so is appended first, then each body gives way to
 * its SHA-256 (the database lets nothing else through), then the signed texts of those days and the derived lives of
 * their batches go. Nothing comes into the book meanwhile. Killed at any moment before its end, nothing was done.
 * @param owner the book by the role that owns its tables
 * @param by the person who has it done
 * @throws EraseRefused `changed_meanwhile` when the book has another answer now, and what planning throws
 */
export async function erase(
  owner: Db,
  plan: Plan,
  by: string,
  clock: Clock,
  progress: Progress,
): Promise<Erasure> {
  const done = await transact(owner, async (within) => {
    await within.drizzle.select().from(head).where(eq(head.site, plan.site)).for('update');
    const now = clock();
    const again = await planErasure(within, plan.site, plan.before, now);
    if (again.digest !== plan.digest || again.count !== plan.count)
      throw new EraseRefused('changed_meanwhile');
    const said = await append(within, plan, by, now);
    await eraseBodies(within, plan, progress);
    await eraseBeside(within, plan);
    return said;
  });
  await owner.sql`vacuum ledger, signed_text`.catch(() => {}); // gives the place back; the server does it later too
  return done;
}

async function append(within: Db, plan: Plan, by: string, now: number): Promise<Erasure> {
  const { before, years, from, to, ranges, count, bytes, digest, sheets } = plan;
  const draft: DraftOf<'erasure'> = {
    id: v7({ msecs: now }),
    kind: 'erasure',
    version: versions.erasure,
    at: isoOf(now),
    entered_at: isoOf(now),
    by,
    body: { before, kept_years: years, from, to, ranges, count, bytes, digest, sheets },
  };
  const writer = { site: plan.site, device: commandLine, knownOf: () => 'command_line' as const };
  const [receipt] = await appendIn(
    within,
    writer,
    [draft],
    () => now,
    () => [],
  );
  if (receipt?.status !== 'written') {
    throw new Error(`erase: the book did not take the erasure: ${JSON.stringify(receipt)}`);
  }
  return { id: draft.id, seq: receipt.seq, hash: receipt.hash };
}

async function eraseBodies({ drizzle }: Db, plan: Plan, progress: Progress): Promise<void> {
  const seqs = plan.ranges.flatMap(([a, b]) => Array.from({ length: b - a + 1 }, (_, n) => a + n));
  let done = 0;
  for (let n = 0; n < seqs.length; n += rowsAtOnce) {
    const slice = `{${seqs.slice(n, n + rowsAtOnce).join(',')}}`;
    const erased = await drizzle.execute(sql`
      update ledger set body = 'sha256:' || encode(sha256(convert_to(body, 'UTF8')), 'hex'),
        subject = null, target = null, day = null
      where site = ${plan.site} and seq = any(${slice}::bigint[])`);
    done += erased.count;
    progress(done, plan.count);
  }
  if (done !== plan.count) throw new Error(`erase: ${done} of ${plan.count} entries could be erased`);
}

async function eraseBeside({ drizzle }: Db, { site, sheets, batches }: Plan): Promise<void> {
  for (let n = 0; n < sheets.length; n += rowsAtOnce) {
    const hashes = sheets.slice(n, n + rowsAtOnce).map(({ hash }) => hash);
    await drizzle.delete(signedText).where(and(eq(signedText.site, site), inArray(signedText.hash, hashes)));
  }
  for (let n = 0; n < batches.length; n += rowsAtOnce) {
    const some = batches.slice(n, n + rowsAtOnce);
    await drizzle.delete(batchLife).where(and(eq(batchLife.site, site), inArray(batchLife.batch, some)));
  }
}
