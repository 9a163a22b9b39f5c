import type { Place } from '#app/ui/PlaceKeys.tsx';
import { profileOf } from '#lib/fold/ask.ts';
import type { Book } from '#lib/fold/book.ts';
import type { Unit } from '#shared/units.ts';
import { type StepRules, stepRules } from './step-rules.ts';

/** What every form about a batch is given: whose hand, which clock, and the places of this kitchen. */
export type BatchContext = {
  by: string;
  zone: string;
  clock: '12' | '24';
  unit: Unit;
  places: Place[];
  rules: StepRules;
};

export function batchContext(book: Book, by: string): BatchContext {
  const { site, equipment } = book.kitchen;
  return {
    by,
    zone: site?.zone ?? 'UTC',
    clock: site?.clock ?? '24',
    unit: site?.unit ?? 'degF',
    places: [...equipment.values()]
      .filter((each) => each.active)
      .map((each) => ({ id: each.equipment, name: each.name, kind: each.kind })),
    rules: stepRules(profileOf(book)),
  };
}
