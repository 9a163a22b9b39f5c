import type { Draft } from '#shared/entries/entry.ts';
import { outboxOf } from './useOutbox.ts';

/** Writes the drafts, and calls `then` once the book has them. What it refuses or cannot take stays on this phone, and is shown. */
export function writeAndThen(site: string, drafts: readonly Draft[], then: () => void): void {
  const outbox = outboxOf(site);
  const ids = new Set(drafts.map(({ id }) => id));
  outbox.write(drafts);
  const stop = outbox.subscribe(() => {
    if (outbox.now().held.some(({ draft }) => ids.has(draft.id))) return;
    stop();
    then();
  });
}
