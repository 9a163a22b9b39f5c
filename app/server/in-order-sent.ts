import type { Receipt } from '#shared/receipt.ts';
import type { Language } from '#shared/words/messages.ts';
import type { Sent } from './parse-drafts.ts';
import { said } from './said.ts';

/** One receipt for each member of what was sent, in its order: the ledger's for drafts, a refusal for the others. */
export function inOrderSent(
  sent: readonly Sent[],
  ofDrafts: readonly Receipt[],
  language: Language,
): Receipt[] {
  const left = [...ofDrafts];
  return sent.flatMap((one) => {
    const receipt = one.problem === null ? left.shift() : refusedOf(one, language);
    return receipt ?? [];
  });
}

function refusedOf(one: Sent & { draft: null }, language: Language): Receipt {
  const problems = said([one.problem], language);
  const [problem = null] = problems;
  return { id: one.id, seq: null, received_at: null, known: null, problem, problems };
}
