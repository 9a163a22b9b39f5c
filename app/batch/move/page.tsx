import { getTranslations } from 'next-intl/server';
import { batchContext } from '#app/batch/context.ts';
import { countedAs } from '#app/batch/counted.ts';
import { FormSheet } from '#app/batch/FormSheet.tsx';
import css from '#app/batch/form.module.css';
import { type GroupInside, MoveAll } from '#app/batch/MoveAll.tsx';
import { loadBook } from '#app/server/book.ts';
import { entrance } from '#app/server/session.ts';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { presentPieces, runsNow } from '#lib/fold/ask.ts';
import type { Book, JudgedRun } from '#lib/fold/book.ts';

export const dynamic = 'force-dynamic';

type Props = { searchParams: Promise<{ equipment?: string }> };

/** All of one cabinet at once; without a cabinet in the address, the choice of one. */
export default async function MovePage({ searchParams }: Props) {
  const session = await entrance();
  const [{ equipment }, book] = await Promise.all([searchParams, loadBook(session)]);
  const t = await getTranslations('batch');
  const common = await getTranslations('common');
  const place = equipment === undefined ? undefined : book.kitchen.equipment.get(equipment);
  const inside = runsNow(book).filter((run) => run.equipment === equipment && equipment !== undefined);
  const groups = await Promise.all(inside.map((run) => groupOf(book, run)));
  return (
    <FormSheet
      title={place === undefined ? t('move.choose') : t('move.title', { place: place.name })}
      back={{ href: '/', words: common('kitchen_now') }}
      nobody={session.hand === null ? { next: `/batch/move?equipment=${equipment ?? ''}` } : null}
    >
      {place === undefined ? (
        <Choice book={book} />
      ) : groups.length === 0 ? (
        <p className={css.form}>{t('move.empty', { place: place.name })}</p>
      ) : (
        <MoveAll
          context={batchContext(book, session.hand ?? '')}
          equipment={place.equipment}
          groups={groups}
        />
      )}
    </FormSheet>
  );
}

function Choice({ book }: { book: Book }) {
  const used = new Set(runsNow(book).map(({ equipment }) => equipment));
  const places = [...book.kitchen.equipment.values()].filter((each) => used.has(each.equipment));
  return (
    <div className={css.form}>
      <div className={css.keys}>
        {places.map((each) => (
          <KeyLink key={each.equipment} href={`/batch/move?equipment=${each.equipment}`}>
            {each.name}
          </KeyLink>
        ))}
      </div>
    </div>
  );
}

async function groupOf(book: Book, run: JudgedRun): Promise<GroupInside> {
  const t = await getTranslations('batch');
  const common = await getTranslations('common');
  const pieces = presentPieces(run);
  const many =
    pieces === null
      ? t('not_counted')
      : common('pieces', { count: pieces.length, counted: countedAs(book.batches.get(run.batch)) });
  return {
    run: run.key,
    batch: run.batch,
    name: book.batches.get(run.batch)?.name ?? '',
    pieces,
    step: run.step,
    words: `${many}, ${common(`step.${run.step}`)}`,
  };
}
