import { useTranslations } from 'next-intl';
import { batchContext } from '#app/batch/context.ts';
import { FormSheet } from '#app/batch/FormSheet.tsx';
import { Missing } from '#app/batch/Missing.tsx';
import { NextStep, type PieceHere } from '#app/batch/NextStep.tsx';
import type { ScreenGiven } from '#app/client/screen.ts';
import type { Batch } from '#lib/fold/book.ts';
import { type StepName, stepName } from '#shared/entries/step-name.ts';

export type NextAsked = { to?: string; pieces?: string };

type Props = { given: ScreenGiven; id: string; asked: NextAsked };

/** The next step of a batch. `to` names it beforehand (`move` = the same step elsewhere), `pieces` the pieces. */
export function NextScreen({ given, id, asked }: Props) {
  const { book, hand } = given;
  const t = useTranslations('batch');
  const batch = book.batches.get(id);
  if (batch === undefined) return <Missing />;
  const pieces = here(batch);
  const to = asked.to === 'move' ? (pieces[0]?.step ?? null) : stepOf(asked.to);
  return (
    <FormSheet
      title={`${batch.name}: ${t(to === 'gone' ? 'act.gone' : asked.to === 'move' ? 'act.move' : 'act.next')}`}
      back={{ href: `/batch/${id}`, words: batch.name }}
      nobody={hand === null ? { next: `/batch/${id}/next` } : null}
    >
      <NextStep
        context={batchContext(book, hand ?? '')}
        batch={{ id, watchPiece: batch.watchPiece }}
        pieces={pieces}
        start={{ step: to, pieces: chosen(asked.pieces, pieces) }}
      />
    </FormSheet>
  );
}

const here = (batch: Batch): PieceHere[] =>
  batch.pieces
    .filter(({ standing }) => standing !== 'gone')
    .map(({ number, step, equipment, standing }) => ({
      number,
      step,
      equipment,
      blocked: standing === 'do_not_serve',
    }));

const stepOf = (text: string | undefined): StepName | null => stepName.safeParse(text).data ?? null;

/** The pieces that the address names, else all that are left. */
function chosen(named: string | undefined, pieces: readonly PieceHere[]): number[] {
  const left = pieces.flatMap(({ number }) => (number === null ? [] : [number]));
  const asked = (named ?? '').split(',').map(Number);
  const known = left.filter((piece) => asked.includes(piece));
  return known.length > 0 ? known : left;
}
