import { getLocale, getTranslations } from 'next-intl/server';
import type { Db } from '#db/connect.ts';
import { type DaySheet, signedSheet } from '#db/day-sheet.ts';
import { changeWords } from '#lib/sheet/change-words.ts';
import { differences } from '#lib/sheet/difference.ts';
import { SheetNames } from '#lib/sheet/sheet-names.ts';
import { sheetWords } from '#lib/sheet/sheet-words.ts';
import css from './page.module.css';

const most = 30;

/** What is different since the last signature: shown before anything else, because the old name still stands there. */
export async function Changes({ db, site, sheet }: { db: Db; site: string; sheet: DaySheet }) {
  const last = sheet.state.signatures.at(-1);
  if (sheet.state.state !== 'changed' || !last) return null;
  const t = await getTranslations('day');
  const { revision } = last.body;
  const signed = await signedSheet(db, site, sheet.state, revision);
  const language = (await getLocale()) === 'es' ? 'es' : 'en';
  const names = new SheetNames(sheet.now.day, sheetWords(language), language);
  const changes = signed ? differences(signed.day, sheet.now.day) : [];
  return (
    <section className={css.strip}>
      <h2>{t('changed_title', { revision })}</h2>
      {signed ? (
        <ul>
          {changes.slice(0, most).map((change) => (
            <li key={JSON.stringify(change)}>{changeWords(names, change)}</li>
          ))}
        </ul>
      ) : (
        <p>{t('changed_unreadable')}</p>
      )}
      {changes.length > most ? <p>{t('changed_more', { count: changes.length - most })}</p> : null}
    </section>
  );
}
