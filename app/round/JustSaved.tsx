import { useTranslations } from 'next-intl';
import type { Held } from '#app/outbox/outbox.ts';
import { Mark } from '#app/ui/Mark.tsx';
import { short } from './figure-words.ts';
import type { RoundGiven } from './given.ts';
import css from './JustSaved.module.css';
import { keyOf, type RoundState } from './round-state.ts';
import { wallTime } from './wall-time.ts';

type Props = { state: RoundState; given: RoundGiven; held: readonly Held[] };

/** What was just written, whether the book has it, and only now what the same place read last time. */
export function JustSaved({ state, given, held }: Props) {
  const t = useTranslations('round');
  const spotWords = useTranslations('common.spot');
  const saved = state.saved.at(-1);
  if (saved === undefined) return null;
  const look = state.looks.find((each) => keyOf(each) === saved.key);
  const here = held.some((h) => h.draft.id === saved.id);
  const spot = saved.spot === null ? '' : spotWords(saved.spot);
  const place = look?.piece ? t('place', { piece: look.piece, spot }) : spot;
  const last = look?.last;
  return (
    <div className={css.saved}>
      <p className={here ? css.pencil : css.written}>{t('saved', { figure: short(saved.typed), place })}</p>
      {saved.under ? (
        <p className={css.tag}>
          {look?.piece ? t('stop.tag', { piece: look.piece }) : t('stop.tag_pan')} {t('blocked')}
        </p>
      ) : null}
      <p className={css.last}>
        <span className={css.state}>
          <Mark word={here ? 'on_this_phone' : 'in_the_book'} />
          {t(here ? 'on_this_phone' : 'in_the_book')}
        </span>{' '}
        {last
          ? t('last', {
              time: wallTime(last.at, given.zone, given.clock),
              hand: last.by,
              figures: last.figures.map((f) => short(f.typed)).join(' / '),
            })
          : t('no_last')}
      </p>
    </div>
  );
}
