import 'server-only';
import type { Db } from '#db/connect.ts';
import { append, type Receipt as LedgerReceipt } from '#db/ledger.ts';
import type { AdmitOptions } from '#lib/fold/admit.ts';
import type { Draft } from '#shared/entries/entry.ts';
import type { Receipt } from '#shared/receipt.ts';
import { admitting } from './admitting.ts';
import { said } from './said.ts';
import { knownOf, type Session } from './session.ts';

function receiptOf(receipt: LedgerReceipt, session: Session): Receipt {
  const id = typeof receipt.id === 'string' ? receipt.id : null;
  if (receipt.status !== 'refused') {
    const { seq, received_at, known } = receipt;
    return { id, seq, received_at, known, problem: null, problems: [] };
  }
  const problems = said(receipt.problems, session.language);
  return { id, seq: null, received_at: null, known: null, problem: problems[0] ?? null, problems };
}

/** Takes each draft into the book or refuses it with its problems, in order. What is answered as taken is on disk. */
export async function writeEntries(
  db: Db,
  session: Session,
  drafts: readonly Draft[],
  options: AdmitOptions,
): Promise<Receipt[]> {
  const { site, device } = session;
  const writer = { site, device, knownOf: (by: string) => knownOf(session, by) };
  const admit = await admitting(db, session, drafts, options);
  const receipts = await append(db, writer, drafts, Date.now, admit);
  return receipts.map((receipt) => receiptOf(receipt, session));
}
