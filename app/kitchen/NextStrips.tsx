import { useTranslations } from 'next-intl';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { TheNext } from '#app/ui/TheNext.tsx';
import css from './KitchenPhone.module.css';
import { useNextWords } from './next-words.ts';
import type { KitchenView } from './view.ts';
import { timeOf } from './view.ts';

/** The next action, and only the two behind it: worst first. The rest stands in the rows. */
export function NextStrips({ view, most = 2 }: { view: KitchenView; most?: number }) {
  const t = useTranslations('kitchen');
  const say = useNextWords();
  const shown = view.now.next.slice(0, most);
  // Two phones wrote of the same food without knowing of each other: somebody has to say which is right.
  const crossed = [...view.book.batches.values()].filter(
    ({ open, conflicts = [] }) => open && conflicts.length > 0,
  );
  const left = view.now.next.length - shown.length;
  return (
    <>
      <TheNext
        items={shown.map((action) => ({
          words: say(action),
          href: action.href,
          by: action.by === null ? undefined : timeOf(view, action.by),
        }))}
      />
      {left > 0 ? <p className={css.more}>{t('more_next', { count: left })}</p> : null}
      {crossed.map(({ id, name }) => (
        <KeyLink key={id} kind="plain" href={`/batch/${id}`} wide>
          {t('crossed', { name })}
        </KeyLink>
      ))}
    </>
  );
}
