import { getLocale, getTranslations } from 'next-intl/server';
import type { Db } from '#db/connect.ts';
import { type DaySheet, signedSheet } from '#db/day-sheet.ts';
import { changeWords } from '#lib/sheet/change-words.ts';
import type { CanonicalDay } from '#lib/sheet/day-schema.ts';
import { differences } from '#lib/sheet/difference.ts';
import { SheetNames } from '#lib/sheet/sheet-names.ts';
import { sheetWords } from '#lib/sheet/sheet-words.ts';
import css from './page.module.css';

const most = 30;

/**
 * What is different since the last signature: shown before anything else, because the old name still stands there.
 * Where only the rules of this program differ from those at the signature, the signed text stands and that is said.
 */
export async function Changes({ db, site, sheet }: { db: Db; site: string; sheet: DaySheet }) {
  const t = await getTranslations('day');
  const { now, otherwise, state } = sheet;
  if (otherwise) {
    return (
      <section className={css.strip}>
        <h2>{t('otherwise_title')}</h2>
        <p>{t('otherwise_stands')}</p>
        <ChangeList before={now.day} after={otherwise} />
      </section>
    );
  }
  const last = state.signatures.at(-1);
  if (state.state !== 'changed' || !last) return null;
  const { revision } = last.body;
  const signed = await signedSheet(db, site, state, revision);
  return (
    <section className={css.strip}>
      <h2>{t('changed_title', { revision })}</h2>
      {signed ? <ChangeList before={signed.day} after={now.day} /> : <p>{t('changed_unreadable')}</p>}
    </section>
  );
}

async function ChangeList({ before, after }: { before: CanonicalDay; after: CanonicalDay }) {
  const t = await getTranslations('day');
  const language = (await getLocale()) === 'es' ? 'es' : 'en';
  const names = new SheetNames(after, sheetWords(language), language);
  const changes = differences(before, after);
  return (
    <>
      <ul>
        {changes.slice(0, most).map((change) => (
          <li key={JSON.stringify(change)}>{changeWords(names, change)}</li>
        ))}
      </ul>
      {changes.length > most ? <p>{t('changed_more', { count: changes.length - most })}</p> : null}
    </>
  );
}
