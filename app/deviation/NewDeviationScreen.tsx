import { useTranslations } from 'next-intl';
import { FormSheet } from '#app/batch/FormSheet.tsx';
import { timeSaid } from '#app/batch/said.ts';
import type { ScreenGiven } from '#app/client/screen.ts';
import { type FoodHere, NewDeviation } from '#app/deviation/NewDeviation.tsx';
import type { Batch, Book, JudgedRun, Look } from '#lib/fold/book.ts';
import { isoOf } from '#shared/time.ts';

export type NewDeviationAsked = { batch?: string; equipment?: string; probe?: string };

type Props = { given: ScreenGiven; asked: NewDeviationAsked };

/** A deviation opened by hand: about food, equipment or a thermometer. */
export function NewDeviationScreen({ given, asked }: Props) {
  const { book, hand, locale } = given;
  const t = useTranslations('deviation');
  const { kitchen } = book;
  const query = new URLSearchParams(Object.entries(asked)).toString();
  return (
    <FormSheet
      title={t('new.title')}
      back={{ href: '/deviation', words: t('title') }}
      nobody={hand === null ? { next: `/deviation/new${query === '' ? '' : `?${query}`}` } : null}
    >
      <NewDeviation
        by={hand ?? ''}
        zone={kitchen.site?.zone ?? 'UTC'}
        foods={[...book.batches.values()]
          .filter(({ open }) => open)
          .map((batch) => foodHere(book, batch, locale))}
        equipment={[...kitchen.equipment.values()]
          .filter(({ active }) => active)
          .map(({ equipment, name }) => ({ id: equipment, name }))}
        probes={[...kitchen.probes.values()]
          .filter(({ active }) => active)
          .map(({ probe, name }) => ({ id: probe, name }))}
        start={{
          batch: asked.batch ?? null,
          equipment: asked.equipment ?? null,
          probe: asked.probe ?? null,
        }}
      />
    </FormSheet>
  );
}

function foodHere(book: Book, batch: Batch, locale: string): FoodHere {
  const left = batch.pieces.filter(({ standing }) => standing !== 'gone');
  const run = batch.runs.findLast((each) => each.end === null) ?? null;
  const last = earliest(left.flatMap(({ lastGood }) => lastGood ?? []));
  const { site } = book.kitchen;
  const at = { zone: site?.zone ?? 'UTC', clock: site?.clock ?? ('24' as const), locale, now: book.asOf };
  return {
    batch: batch.id,
    name: batch.name,
    pieces: left.flatMap(({ number }) => number ?? []),
    step: run?.step ?? null,
    equipment: run?.equipment ?? null,
    limit: limitOf(run),
    lastGood: last === null ? null : { entry: last.id, at: isoOf(last.at), words: timeSaid(last.at, at) },
  };
}

/** Of the pieces' last good looks the one that lies furthest back: the worst case for all of them. */
const earliest = (looks: readonly Look[]): Look | null =>
  looks.reduce<Look | null>((first, look) => (first === null || look.at < first.at ? look : first), null);

/** The figure that the step asks for, with its section, as it stands in the judge's answer. */
function limitOf(run: JudgedRun | null): FoodHere['limit'] {
  const stage = run?.stages.at_readings ?? run?.stages.stage_1 ?? run?.stages.temperature;
  if (!stage?.limit) return null;
  return {
    section: stage.section,
    value: stage.limit.value,
    unit: stage.limit.unit,
    within_min: stage.limit_min,
  };
}
