import type { Entry, EntryOf } from '#shared/entries/entry.ts';
import { spot } from '#shared/entries/step-name.ts';
import { msOf } from '#shared/time.ts';
import type { Odd } from './book.ts';
import { ofKind } from './order.ts';

export type Amended = {
  /** As they stand now: corrected, those taken back left out, amendments themselves left out. */
  entries: Entry[];
  /** Taken back, as they were written: remembered and printed, counted nowhere. */
  struck: Map<string, Entry>;
  /** Entry id → its amendments in force, in order. */
  amendments: Map<string, EntryOf<'amendment'>[]>;
  odd: Odd[];
};

type Field = EntryOf<'amendment'>['body']['field'];

const nothing = (text: string): boolean => text === '' || text === 'null' || text === '-';

/** What `to` means for a field; undefined = it cannot be read. A decimal comma is a decimal point. */
function meant(field: Field, to: string): unknown {
  const text = to.trim();
  switch (field) {
    case 'value':
    case 'held_s': {
      if (field === 'held_s' && nothing(text)) return null;
      const value = Number(text.replace(',', '.'));
      return text !== '' && Number.isFinite(value) ? value : undefined;
    }
    case 'piece': {
      if (nothing(text)) return null;
      const piece = Number(text);
      return Number.isInteger(piece) && piece >= 1 && piece <= 999 ? piece : undefined;
    }
    case 'at':
      return Number.isFinite(msOf(text)) ? text : undefined;
    case 'spot':
      return nothing(text) ? null : spot.options.find((option) => option === text);
    case 'struck':
      return text !== 'false';
    default:
      return nothing(text) ? null : text;
  }
}

/** The entry with one field as it was meant, or null where the entry has no such field. */
function withField(entry: Entry, field: Field, value: unknown, to: string): Entry | null {
  if (field === 'at') return { ...entry, at: String(value) };
  if (!Object.hasOwn(entry.body, field)) return null;
  const body: Record<string, unknown> = { ...entry.body, [field]: value };
  if (field === 'value' && Object.hasOwn(body, 'typed')) body.typed = to.trim();
  return { ...entry, body } as Entry;
}

const oddOf = (amendment: EntryOf<'amendment'>, key: string): Odd => ({
  entry: amendment.id,
  at: msOf(amendment.at),
  key,
  values: { field: amendment.body.field, to: amendment.body.to },
});

function correct(entry: Entry, amendments: readonly EntryOf<'amendment'>[], odd: Odd[]): Entry {
  let now = entry;
  for (const amendment of amendments) {
    const { field, to } = amendment.body;
    if (field === 'struck') continue;
    const next = amendedEntry(now, field, to);
    if (next) now = next;
    else odd.push(oddOf(amendment, next === undefined ? 'amendment_unreadable' : 'amendment_no_field'));
  }
  return now;
}

/** The last word about being taken back counts: an undo can itself be undone. */
const isStruck = (amendments: readonly EntryOf<'amendment'>[]): boolean =>
  amendments
    .filter(({ body }) => body.field === 'struck')
    .at(-1)
    ?.body.to.trim() !== 'false' && amendments.some(({ body }) => body.field === 'struck');

/** Amendments that are in force: an amendment may itself have been taken back by a later one. */
function inForce(all: readonly EntryOf<'amendment'>[]): EntryOf<'amendment'>[] {
  const byTarget = Map.groupBy(all, ({ body }) => body.target);
  const alive = (amendment: EntryOf<'amendment'>, depth: number): boolean =>
    depth > 20 || !isStruck((byTarget.get(amendment.id) ?? []).filter((later) => alive(later, depth + 1)));
  return all.filter((amendment) => alive(amendment, 0));
}

/**
 * The entry as an amendment would have it: null where the entry lacks the field, undefined where `to` cannot be
 * read as one. Taking an entry back changes no field of it.
 */
export function amendedEntry(entry: Entry, field: Field, to: string): Entry | null | undefined {
  if (field === 'struck') return entry;
  const value = meant(field, to);
  return value === undefined ? undefined : withField(entry, field, value, to);
}

/** Applies the amendments among `entries` (in order) that were observed at or before `knownUntil` (ms). */
export function applyAmendments(entries: readonly Entry[], knownUntil: number): Amended {
  const all = ofKind(entries, 'amendment').filter(({ at }) => msOf(at) <= knownUntil);
  const ids = new Set(entries.map(({ id }) => id));
  const odd = all
    .filter(({ body }) => !ids.has(body.target))
    .map((amendment) => oddOf(amendment, 'amendment_of_unknown'));
  const amendments = Map.groupBy(inForce(all), ({ body }) => body.target);
  const struck = new Map<string, Entry>();
  const now: Entry[] = [];
  for (const entry of entries) {
    if (entry.kind === 'amendment') continue;
    const own = amendments.get(entry.id) ?? [];
    if (isStruck(own)) struck.set(entry.id, entry);
    else now.push(own.length === 0 ? entry : correct(entry, own, odd));
  }
  return { entries: now, struck, amendments, odd };
}
