import { getLocale, getTranslations } from 'next-intl/server';
import { keyClass } from '#app/ui/Key.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import type { SheetNames } from '#lib/sheet/sheet-names.ts';
import type { SheetState } from '#lib/sheet/sheet-state.ts';
import css from './page.module.css';

type Props = { day: string; revision: number | null; state: SheetState; names: SheetNames };

/** The sheet as files, and every text that was signed before. */
export async function Downloads({ day, revision, state, names }: Props) {
  const t = await getTranslations('day');
  const language = (await getLocale()) === 'es' ? 'es' : 'en';
  const file = (query: string): string =>
    `/api/day/${day}/sheet?${query}${revision === null ? '' : `&revision=${revision}`}`;
  const once = [...new Map(state.signatures.map((one) => [one.body.revision, one])).values()];
  return (
    <section className={css.downloads}>
      <h2>{t('print')}</h2>
      {(['letter', 'a4'] as const).map((paper) => (
        <a
          key={paper}
          className={keyClass('normal', true)}
          href={file(`format=pdf&paper=${paper}&lang=${language}`)}
        >
          <span>{t('pdf', { paper: t(`paper.${paper}`) })}</span>
        </a>
      ))}
      <a className={keyClass('plain', true)} href={file('format=csv')}>
        <span>{t('csv')}</span>
      </a>
      <a className={keyClass('plain', true)} href={file('format=json')}>
        <span>{t('json')}</span>
      </a>
      {once.length > 0 ? (
        <>
          <h2>{t('revisions')}</h2>
          {once.map((one) => (
            <KeyLink key={one.id} kind="plain" wide href={`/day/${day}?revision=${one.body.revision}`}>
              {t('revision', { revision: one.body.revision, name: one.body.name, at: names.moment(one.at) })}
            </KeyLink>
          ))}
        </>
      ) : null}
    </section>
  );
}
