import type { Book, Check } from '#lib/fold/book.ts';
import type { Body } from '#shared/entries/entry.ts';

/** A thermometer as the book knows it: its last check, what it made suspect, and when the plan asks again. */
export type ProbeStanding = {
  probe: Body<'probe'>;
  last: Check | null;
  dueAt: number | null; // null = no plan asks, or it was never checked (then it is due now)
  neverChecked: boolean;
};

export function standings(book: Book): ProbeStanding[] {
  const plan = [...book.kitchen.plans.values()].find((p) => p.active && p.step === 'probe_check');
  return [...book.kitchen.probes.values()]
    .filter((probe) => probe.active)
    .map((probe) => {
      const last = book.checks.filter((check) => check.probe === probe.probe).at(-1) ?? null;
      const every = plan?.every_min ?? null;
      return {
        probe,
        last,
        dueAt: last === null || every === null ? null : last.at + every * 60_000,
        neverChecked: last === null,
      };
    });
}
