import { useTranslations } from 'next-intl';
import { batchContext } from '#app/batch/context.ts';
import { countedAs } from '#app/batch/counted.ts';
import { FormSheet } from '#app/batch/FormSheet.tsx';
import css from '#app/batch/form.module.css';
import { type GroupInside, MoveAll } from '#app/batch/MoveAll.tsx';
import type { ScreenGiven } from '#app/client/screen.ts';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { presentPieces, runsNow } from '#lib/fold/ask.ts';
import type { Book } from '#lib/fold/book.ts';

type Props = { given: ScreenGiven; equipment?: string | undefined };

/** All of one cabinet at once; without a cabinet in the address, the choice of one. */
export function MoveScreen({ given, equipment }: Props) {
  const { book, hand } = given;
  const t = useTranslations('batch');
  const common = useTranslations('common');
  const place = equipment === undefined ? undefined : book.kitchen.equipment.get(equipment);
  const inside = runsNow(book).filter((run) => run.equipment === equipment && equipment !== undefined);
  const groups = inside.map((run): GroupInside => {
    const pieces = presentPieces(run);
    const batch = book.batches.get(run.batch);
    const many =
      pieces === null
        ? t('not_counted')
        : common('pieces', { count: pieces.length, counted: countedAs(batch) });
    return {
      run: run.key,
      batch: run.batch,
      name: batch?.name ?? '',
      pieces,
      step: run.step,
      words: `${many}, ${common(`step.${run.step}`)}`,
    };
  });
  return (
    <FormSheet
      title={place === undefined ? t('move.choose') : t('move.title', { place: place.name })}
      back={{ href: '/', words: common('kitchen_now') }}
      nobody={hand === null ? { next: `/batch/move?equipment=${equipment ?? ''}` } : null}
    >
      {place === undefined ? (
        <Choice book={book} />
      ) : groups.length === 0 ? (
        <p className={css.form}>{t('move.empty', { place: place.name })}</p>
      ) : (
        <MoveAll context={batchContext(book, hand ?? '')} equipment={place.equipment} groups={groups} />
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
