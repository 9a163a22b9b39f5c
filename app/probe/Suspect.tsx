import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { momentOf } from '#app/cabinet/view.ts';
import { suspectLooks } from '#lib/between/probe-record.ts';
import type { Book, Check } from '#lib/fold/book.ts';
import { degrees } from '#shared/units.ts';
import css from './page.module.css';
import type { ProbeView } from './view.ts';

const MOST = 30;

type Props = { book: Book; failed: Check; lastGood: Check | null; view: ProbeView };

/** Each reading that a failed check puts in doubt, with the way to its batch. */
export function Suspect({ book, failed, lastGood, view }: Props) {
  const t = useTranslations('kitchen.probe');
  const spot = useTranslations('common.spot');
  const looks = suspectLooks(book, failed);
  const more = failed.suspect.length - Math.min(looks.length, MOST);
  if (failed.suspect.length === 0) return null;
  const place = (look: (typeof looks)[number]): string =>
    [
      look.batch === null ? null : book.batches.get(look.batch)?.name,
      look.equipment === null ? null : book.kitchen.equipment.get(look.equipment)?.name,
    ]
      .filter(Boolean)
      .join(', ');
  return (
    <section className={css.part}>
      <h3>{t('suspect_title')}</h3>
      <p>
        {lastGood === null ? t('suspect_why_never') : t('suspect_why', { time: momentOf(view, lastGood.at) })}
      </p>
      <ul className={css.looks}>
        {looks.slice(0, MOST).map((look) => {
          const said = `${momentOf(view, look.at)} · ${place(look)} · ${[
            `${look.typed} ${degrees(look.unit)}`,
            look.spot === null ? null : spot(look.spot),
          ]
            .filter(Boolean)
            .join(', ')}`;
          return (
            <li key={look.id}>
              {look.batch === null ? (
                said
              ) : (
                <Link href={`/batch/${look.batch}`} prefetch={false} className={css.look}>
                  {said}
                </Link>
              )}
            </li>
          );
        })}
        {more > 0 ? <li>{t('suspect_more', { count: more })}</li> : null}
      </ul>
    </section>
  );
}
