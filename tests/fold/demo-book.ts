import { demoDrafts } from '#db/demo/demo-drafts.ts';
import json from '#db/demo/night.json' with { type: 'json' };
import type { Night } from '#db/demo/night.ts';
import { type FoldOptions, foldBook } from '#lib/fold/fold-book.ts';
import type { Draft, Entry } from '#shared/entries/entry.ts';

export type Finding = {
  batch: string | null;
  piece: number | null;
  pieces?: number[];
  step: string;
  stage: string;
  finding: string;
  why: string;
};

export const expectedFindings = json.expected_findings as Finding[];
export const expectedSuspect = json.suspect_readings as string[];

let made = 0;
const newId = (ms: number): string => {
  made += 1;
  const head = ms.toString(16).padStart(12, '0');
  return `${head.slice(0, 8)}-${head.slice(8)}-7000-8000-${String(made).padStart(12, '0')}`;
};

const drafts = demoDrafts(json as unknown as Night, { shiftDays: 0, newId });

/** In the order in which a ledger would have got them. */
export const demoEntries: Entry[] = [...drafts.setUp, ...drafts.events].map(
  (draft: Draft, index) =>
    ({
      ...draft,
      site: 'site',
      seq: index + 1,
      received_at: draft.entered_at,
      known: 'secret',
      device: 'device',
    }) as Entry,
);

/** Name of the demo night ("e0298", "BR-A", "cab2") → id in the book. */
export const idOf = (name: string): string => drafts.ids.get(name) ?? `unknown ${name}`;
const names = new Map([...drafts.ids].map(([name, id]) => [id, name]));
export const nameOf = (id: string | null | undefined): string | null => (id ? (names.get(id) ?? id) : null);

/** 13:10 on Saturday, the moment of the expected findings. */
export const saturday = Date.parse('2026-10-17T13:10:00-05:00');
export const demoBook = (at: number | FoldOptions = saturday) => foldBook(demoEntries, at);
