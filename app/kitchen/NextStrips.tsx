import { useTranslations } from 'next-intl';
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
    </>
  );
}
