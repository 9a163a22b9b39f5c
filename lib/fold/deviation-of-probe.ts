import type { Check } from './book.ts';
import { blank, type Draft } from './deviation-draft.ts';

/** Failed checks of one thermometer with no good one between them are one deviation: "probe/<id of the first>". */
export function fromChecks(checks: readonly Check[]): { draft: Draft; ids: string[] }[] {
  const open = new Map<string, { draft: Draft; ids: string[] }>();
  const all: { draft: Draft; ids: string[] }[] = [];
  const good = new Map<string, number>();
  for (const check of checks) {
    if (check.verdict === 'kept') {
      open.delete(check.probe);
      good.set(check.probe, check.at);
      continue;
    }
    const known = open.get(check.probe);
    if (known) {
      known.ids.push(check.entry.id);
      continue;
    }
    const draft: Draft = {
      ...blank,
      aliases: [],
      ref: `probe/${check.entry.id}`,
      opened: 'by_the_judge',
      stage: check.entry.body.bath,
      probe: check.probe,
      section: check.section,
      foundAt: check.at,
      since: good.get(check.probe) ?? null,
    };
    const made = { draft, ids: [check.entry.id] };
    open.set(check.probe, made);
    all.push(made);
  }
  return all;
}
