import { getLocale, getTranslations } from 'next-intl/server';
import { loadBook } from '#app/server/book.ts';
import { entrance } from '#app/server/session.ts';
import { Foot } from '#app/ui/Foot.tsx';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Words } from '#app/ui/Words.tsx';
import { PlaceTable } from './PlaceTable.tsx';
import { PrintKey } from './PrintKey.tsx';
import css from './page.module.css';
import { roundPaper } from './round-paper.ts';

/** A blank round sheet to print: paper when all else fails. */
export default async function Page() {
  const book = await loadBook(await entrance());
  const t = await getTranslations('setup.paper');
  const c = await getTranslations('common');
  const places = roundPaper(book, (await getLocale()) === 'es' ? 'es' : 'en');
  const called = [...book.kitchen.people.values()]
    .filter(({ active, on_call }) => active && on_call)
    .map(({ name, phone }) => [name, phone].filter(Boolean).join(' '));
  return (
    <Sheet width="tablet">
      <Headband title={t('title')} back={{ href: '/', words: c('kitchen_now') }} />
      <div className={css.how}>
        <p>{t('how')}</p>
        <p>{t('later')}</p>
      </div>
      {places.length === 0 ? (
        <p className={css.how}>{t('nothing')}</p>
      ) : (
        <div className={css.white} data-room="print">
          <h2 className={css.heading}>
            {book.kitchen.site?.name} · {t('heading')}
          </h2>
          <dl className={css.blanks}>
            {(['date', 'round', 'hand'] as const).map((blank) => (
              <div key={blank} className={css.blank}>
                <dt>{t(blank)}</dt>
                <dd />
              </div>
            ))}
          </dl>
          <p className={css.order}>
            <strong>{t('under')}</strong> {called.length > 0 ? t('call', { list: called.join(', ') }) : null}
          </p>
          {places.map((place) => (
            <PlaceTable key={place.equipment} place={place} />
          ))}
          <p className={css.foot}>
            {t('later')} {c('local_codes')}
          </p>
        </div>
      )}
      <Words names={['setup']}>
        <Foot>
          <PrintKey />
          <KeyLink kind="plain" href="/set-up">
            {c('back')}
          </KeyLink>
        </Foot>
      </Words>
    </Sheet>
  );
}
