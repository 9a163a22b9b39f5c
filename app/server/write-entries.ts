import 'server-only';
import { createTranslator } from 'use-intl/core';
import type { Db } from '#db/connect.ts';
import { appendAsked, type Receipt as LedgerReceipt } from '#db/ledger.ts';
import type { AdmitOptions } from '#lib/fold/admit.ts';
import type { Draft } from '#shared/entries/entry.ts';
import type { Receipt } from '#shared/receipt.ts';
import { messages } from '#shared/words/messages.ts';
import { admitting } from './admitting.ts';
import { kitchenOf } from './kitchen-of.ts';
import { serverDraft } from './note-in-book.ts';
import { said } from './said.ts';
import { knownOf, type Session } from './session.ts';
import { acceptor, type Unsigned } from './stands-for.ts';

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
  options: AdmitOptions & Unsigned & { was?: ReadonlySet<string> },
): Promise<Receipt[]> {
  const { site, device } = session;
  const writer = { site, device, knownOf: (by: string) => knownOf(session, by) };
  const asking = (within: Db) => admitting(db, session, drafts, options, within);
  const by = options.accepted.size === 0 ? null : acceptor(session, await kitchenOf(db, site));
  const remark = (receipts: readonly LedgerReceipt[]): Draft[] => {
    const taken = receipts.flatMap((receipt) =>
      receipt.status === 'written' && options.accepted.has(receipt.id) ? [receipt.seq] : [],
    );
    return by === null || taken.length === 0 ? [] : [acceptedNote(session, by, taken)];
  };
  const receipts = await appendAsked(db, writer, drafts, Date.now, asking, remark);
  return receipts.map((receipt) => receiptOf(receipt, session));
}

/** Who stood for entries of somebody who was not signed in: written with them, so that a reader sees it. */
function acceptedNote(session: Session, by: string, seqs: readonly number[]): Draft {
  const words = createTranslator({
    locale: session.language,
    messages: messages[session.language],
    namespace: 'round.not_sent',
    timeZone: 'UTC',
  });
  const body = {
    text: words('accepted', { count: seqs.length, entries: seqs.join(', ') }),
    lang: session.language,
    batch: null,
    piece: null,
    equipment: null,
    probe: null,
    round: null,
    could_not: null,
  };
  return serverDraft('note', body, by);
}
