import type { Entry, EntryOf } from '#shared/entries/entry.ts';
import { msOf } from '#shared/time.ts';
import type { Book, Odd } from './book.ts';
import { ofKind } from './order.ts';

/** Power cuts of each piece of equipment: when it went off, why, and when it was on again (null = it still is off). */
export function foldOff(entries: readonly Entry[]): { off: Book['off']; odd: Odd[] } {
  const off = new Map<string, { at: number; reason: string; until: number | null }[]>();
  const odd: Odd[] = [];
  for (const entry of entries) {
    if (entry.kind === 'equipment_off') {
      const list = off.get(entry.body.equipment) ?? [];
      // Off twice without on between: the first stands, for it says the longer time.
      if (list.at(-1)?.until === null) continue;
      off.set(entry.body.equipment, [
        ...list,
        { at: msOf(entry.at), reason: entry.body.reason, until: null },
      ]);
    }
    if (entry.kind !== 'equipment_on') continue;
    const last = off.get(entry.body.equipment)?.at(-1);
    if (last && last.until === null) last.until = msOf(entry.at);
    else odd.push({ entry: entry.id, at: msOf(entry.at), key: 'equipment_on_without_off', values: {} });
  }
  return { off, odd };
}

/** Each round as its last entry says it, in order of its start. */
export function foldRounds(entries: readonly Entry[]): EntryOf<'round'>[] {
  const last = new Map<string, EntryOf<'round'>>();
  for (const entry of ofKind(entries, 'round')) {
    const before = last.get(entry.body.round);
    // A missed round stays missed: nobody fills it in.
    if (before?.body.status === 'missed' && entry.body.status !== 'missed') continue;
    if (before && before.seq > entry.seq) continue;
    last.set(entry.body.round, entry);
  }
  return [...last.values()].sort((a, b) => msOf(a.at) - msOf(b.at) || a.seq - b.seq);
}
