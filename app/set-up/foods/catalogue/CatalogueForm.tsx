'use client'; // ticks, then one entry a food
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { type FormEvent, useRef, useState } from 'react';
import { v7 } from 'uuid';
import { draft, postEntries } from '#app/client/post-entries.ts';
import type { ErrorShown } from '#app/ui/ErrorSummary.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import type { Draft } from '#shared/entries/entry.ts';
import { foodClass } from '#shared/entries/food.ts';
import { type CatalogueFood, catalogueName, type FoodKey, foodBody, foodCatalogue } from '#shared/foods.ts';
import { ThingFrame } from '../../form/ThingFrame.tsx';
import { useProblemWords } from '../../form/use-problem-words.ts';
import type { ClassLines } from '../class-lines.ts';

type Props = {
  by: string;
  cannot: string | null;
  here: readonly FoodKey[]; // already in the kitchen's list
  lines: ClassLines;
  language: 'en' | 'es'; // of this screen
  written: 'en' | 'es'; // in which the kitchen writes its names
};

const back = '/set-up/foods';
const classes = foodClass.options.filter((each) => foodCatalogue.some((food) => food.class === each));

/** The usual foods by class: what is ticked is written into the book, one entry a food. */
export function CatalogueForm({ by, cannot, here, lines, language, written }: Props) {
  const t = useTranslations('setup.foods');
  const c = useTranslations('common');
  const router = useRouter();
  const wordsOf = useProblemWords();
  const [ticked, setTicked] = useState<readonly FoodKey[]>([]);
  const [state, setState] = useState<State>({ busy: false, errors: [], attempt: 0, wantsSignIn: false });
  // The same tick sent again keeps its ids: an answer lost on the way writes nothing twice.
  const made = useRef(new Map<FoodKey, Draft>());
  const draftOf = (food: CatalogueFood): Draft => {
    const known = made.current.get(food.key);
    if (known) return known;
    const fresh = draft('food', foodBody(food, written, v7()), { by }) as Draft;
    made.current.set(food.key, fresh);
    return fresh;
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const chosen = foodCatalogue.filter(({ key }) => ticked.includes(key));
    if (chosen.length === 0) return;
    setState((before) => ({ ...before, busy: true }));
    const answer = await postEntries(chosen.map(draftOf));
    const problems = 'problems' in answer ? answer.problems : answer.receipts.flatMap((one) => one.problems);
    setState(({ attempt }) => ({
      busy: false,
      attempt: attempt + 1,
      errors: [...new Set(problems.map(wordsOf))].map((words) => ({ words })),
      wantsSignIn: problems.some(({ remedy }) => remedy === 'sign_in' || remedy === 'choose_hand'),
    }));
    if (problems.length > 0) return;
    router.push(back);
    router.refresh();
  };
  const turn = (key: FoodKey) =>
    setTicked((before) => (before.includes(key) ? before.filter((one) => one !== key) : [...before, key]));
  return (
    <ThingFrame
      {...state}
      submit={(event) => void submit(event)}
      saved={false}
      cannot={cannot}
      notYet={ticked.length === 0 ? t('list_none') : null}
      back={back}
      save={t('list_add', { count: ticked.length })}
    >
      <p>{t('list_help')}</p>
      {classes.map((each) => (
        <PickGroup key={each} label={c(`food_class.${each}`)} hint={lines[each]}>
          {foodCatalogue
            .filter((food) => food.class === each)
            .map(({ key, counted, sealed }) => (
              <Pick
                key={key}
                type="checkbox"
                title={catalogueName(key, language)}
                note={noteOf(
                  here.includes(key) ? t('list_here') : null,
                  c(`counted.${counted}`),
                  sealed === true ? t('sealed') : null,
                )}
                checked={here.includes(key) || ticked.includes(key)}
                disabled={here.includes(key)}
                onChange={() => turn(key)}
              />
            ))}
        </PickGroup>
      ))}
    </ThingFrame>
  );
}

type State = { busy: boolean; errors: readonly ErrorShown[]; attempt: number; wantsSignIn: boolean };

const noteOf = (...parts: (string | null)[]): string => parts.filter((part) => part !== null).join(' · ');
