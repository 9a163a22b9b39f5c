import type { Draft } from '#shared/entries/entry.ts';
import type { Refusal } from './outbox.ts';
import { outboxOf } from './useOutbox.ts';

/** Writes the drafts, and calls `then` once the book has them. What it refuses or cannot take stays on this phone, and is shown. */
export function writeAndThen(site: string, drafts: readonly Draft[], then: () => void): void {
  const outbox = outboxOf(site);
  const ids = new Set(drafts.map(({ id }) => id));
  void outbox.write(drafts);
  const stop = outbox.subscribe(() => {
    if (outbox.now().held.some(({ draft }) => ids.has(draft.id))) return;
    stop();
    then();
  });
}

/**
 * Writes the drafts of a form and settles when it is known where they are: in the book; on this phone until
 * something answers; or refused. What was refused is taken out again (the form still shows it) and its words come
 * back; of drafts that belong together the others stand.
 */
export function writeAndWait(site: string, drafts: readonly Draft[]): Promise<Refusal[]> {
  const outbox = outboxOf(site);
  const ids = new Set(drafts.map(({ id }) => id));
  const before = outbox.now().fault; // of an earlier try: it says nothing of this one
  return new Promise((done) => {
    const look = (): void => {
      const { held, fault, posting } = outbox.now();
      const mine = held.filter(({ draft }) => ids.has(draft.id));
      const refused = mine.filter((each) => each.refused !== null);
      const safe =
        fault !== null &&
        fault !== before &&
        !posting &&
        mine.every((each) => each.kept || each.refused !== null);
      if (refused.length < mine.length && !safe) return;
      stop();
      for (const { draft } of refused) outbox.drop(draft.id);
      done(refused.flatMap((each) => each.refused ?? []));
    };
    const known = new Set(outbox.now().held.map(({ draft }) => draft.id));
    const stop = outbox.subscribe(look);
    const fresh = drafts.filter(({ id }) => !known.has(id));
    void (fresh.length > 0 ? outbox.write(fresh) : outbox.send());
  });
}
