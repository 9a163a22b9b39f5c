import { useTranslations } from 'next-intl';
import { batchContext } from '#app/batch/context.ts';
import type { FoodOffered } from '#app/batch/FoodPick.tsx';
import { FormSheet } from '#app/batch/FormSheet.tsx';
import css from '#app/batch/form.module.css';
import { NewBatch } from '#app/batch/NewBatch.tsx';
import type { Made } from '#app/batch/new-batch.ts';
import type { SourceBatch } from '#app/batch/SourcePick.tsx';
import { foodSaid } from '#app/batch/view.ts';
import type { ScreenGiven } from '#app/client/screen.ts';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import type { Batch, Book } from '#lib/fold/book.ts';

export type NewBatchAsked = { cut?: string; split?: string; join?: string };

type Props = { given: ScreenGiven; asked: NewBatchAsked };

/** A new batch; or one that is made by cutting, splitting or joining batches that are there. */
export function NewBatchScreen({ given, asked }: Props) {
  const { book, hand, locale } = given;
  const t = useTranslations('batch');
  const common = useTranslations('common');
  const { made, first } = madeOf(asked);
  const source = first === null ? undefined : book.batches.get(first);
  const foods = foodsOf(book, locale);
  const way: Made = source === undefined ? 'new' : made;
  return (
    <FormSheet
      title={t(`make.${way}`, { name: source?.name ?? '' })}
      back={
        source === undefined
          ? { href: '/', words: common('kitchen_now') }
          : { href: `/batch/${source.id}`, words: source.name }
      }
      nobody={hand === null ? { next: addressOf(asked) } : null}
    >
      <NewBatch
        context={batchContext(book, hand ?? '')}
        foods={foods}
        taken={[...book.batches.values()].map(({ name }) => name)}
        made={way}
        from={sourcesOf(book, way, source)}
        first={source?.id ?? null}
      />
      {foods.length === 0 ? (
        <div className={css.form}>
          <KeyLink href="/set-up/foods" wide>
            {t('food_set_up')}
          </KeyLink>
        </div>
      ) : null}
    </FormSheet>
  );
}

function madeOf(asked: NewBatchAsked): { made: Made; first: string | null } {
  if (asked.cut) return { made: 'cut', first: asked.cut };
  if (asked.split) return { made: 'split', first: asked.split };
  if (asked.join) return { made: 'join', first: asked.join };
  return { made: 'new', first: null };
}

function addressOf(asked: NewBatchAsked): string {
  const query = new URLSearchParams(Object.entries(asked)).toString();
  return query === '' ? '/batch/new' : `/batch/new?${query}`;
}

const foodsOf = (book: Book, locale: 'en' | 'es'): FoodOffered[] =>
  [...book.kitchen.foods.values()]
    .filter(({ active }) => active)
    .map((food) => ({ id: food.food, name: foodSaid(food, locale), counted: food.counted }));

/** What can go in: the batch that was opened, or for a join every batch that is here. */
function sourcesOf(book: Book, made: Made, source: Batch | undefined): SourceBatch[] {
  if (made === 'new' || source === undefined) return [];
  const batches = made === 'join' ? [...book.batches.values()].filter(({ open }) => open) : [source];
  return batches.map(sourceOf);
}

function sourceOf(batch: Batch): SourceBatch {
  const left = batch.pieces.filter(({ standing }) => standing !== 'gone');
  const blocked = left.filter(({ standing }) => standing === 'do_not_serve');
  const numbers = blocked.flatMap(({ number }) => number ?? []);
  return {
    id: batch.id,
    name: batch.name,
    food: batch.foodId,
    pieces: left.flatMap(({ number }) => number ?? []),
    blocked: blocked.length > 0 && blocked.length === left.length ? 'all' : numbers,
  };
}
