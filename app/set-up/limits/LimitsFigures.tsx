import { useLocale, useTranslations } from 'next-intl';
import { Fragment } from 'react';
import { Section } from '#app/ui/Section.tsx';
import { groupedFigures, listedFigures } from '#lib/limits/listing.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { noteIn } from '#shared/words/note-in.ts';
import css from './LimitsFigures.module.css';

type Grouped = ReturnType<typeof groupedFigures>[number];
type Sentence = { (key: string): string; has: (key: string) => boolean };

/** Under which head a role stands; the heads stand in this order. */
const heads = [
  ['hot', /^(hot_|record_hot)/],
  ['cold', /^cold_/],
  ['cooling', /^cooling/],
  ['reheat', /^reheat/],
  ['cook', /^(cook|roast|come_up|noncontinuous)/],
  ['time', /^time_control/],
  ['date', /^date_/],
  ['probe', /^probe_/],
  ['records', /^retention/],
  ['other', /^/],
] as const;

const headOf = ({ roles }: Grouped) => heads.find(([, of]) => of.test(roles[0] ?? ''))?.[0] ?? 'other';

const useLanguage = (): 'en' | 'es' => (useLocale() === 'es' ? 'es' : 'en');

/** Every figure of a profile: what it asks, its section and edition, how it was checked; then its notes. */
export function LimitsFigures({ profile }: { profile: Profile }) {
  const t = useTranslations('limits');
  const language = useLanguage();
  const groups = groupedFigures(listedFigures(profile));
  const notes = profile.notes.map((note) => noteIn(language, note));
  const byHead = Map.groupBy(groups, headOf);
  return (
    <div className={css.figures}>
      {groups.length === 0 ? <p>{t('figures.none')}</p> : null}
      {heads.map(([head]) => {
        const inIt = byHead.get(head);
        return inIt === undefined ? null : (
          <section key={head}>
            <h3 className={css.head}>{t(`part.${head}`)}</h3>
            <ul>
              {inIt.map((one) => (
                <Row key={one.figure.id} {...one} />
              ))}
            </ul>
          </section>
        );
      })}
      {profile.notes.length === 0 ? null : (
        <section>
          <h3 className={css.head}>{t('figures.notes')}</h3>
          <ul>
            {notes.map(({ words, lang }) => (
              <li key={words} className={css.row} lang={lang}>
                {words}
              </li>
            ))}
          </ul>
          {notes.some(({ lang }) => lang !== language) ? (
            <p className={css.note}>{t('figures.notes_in_english')}</p>
          ) : null}
        </section>
      )}
      {groups.some(({ figure }) => figure.checked === 'memory') ? (
        <p className={css.note}>{t('figures.memory_note')}</p>
      ) : null}
    </div>
  );
}

function Row({ roles, figure }: Grouped) {
  const t = useTranslations('limits');
  const role = useTranslations('limits.role') as unknown as Sentence;
  const called = roles.map((one) => (role.has(one) ? role(one) : figure.speaks_of));
  const language = useLanguage();
  const { value, from, until } = figure;
  const words = figure.words === null ? null : noteIn(language, figure.words);
  const disputed = figure.disputed === null ? null : noteIn(language, figure.disputed);
  return (
    <li className={css.row}>
      <p>
        {[...new Set(called)].join(', ')}
        {value === null ? null : (
          <>
            {': '}
            <Value value={value} />
          </>
        )}{' '}
        <Section>{figure.section}</Section>
      </p>
      {words === null ? null : <p lang={words.lang}>{words.words}</p>}
      <p className={css.note}>
        {[
          figure.edition,
          t(`force.${figure.force}`),
          figure.force === 'house' ? '' : t(`checked.${figure.checked}`),
          from === null ? '' : t('figures.from', { date: from }),
          until === null ? '' : t('figures.until', { date: until }),
        ]
          .filter(Boolean)
          .join(' · ')}
      </p>
      {figure.force === 'house' ? null : (
        <p className={css.note}>
          {t.rich('figures.where', { where: figure.where, en: (said) => <span lang="en">{said}</span> })}
        </p>
      )}
      {disputed === null ? null : (
        <p className={css.note}>
          {t.rich('figures.disputed', {
            what: disputed.words,
            said: (said) => <span lang={disputed.lang}>{said}</span>,
          })}
        </p>
      )}
    </li>
  );
}

/** A figure; of a chart, row by row, none broken in the middle. */
function Value({ value }: { value: string }) {
  const rows = value.split(', ');
  return rows.map((row, at) => (
    <Fragment key={row}>
      <b className={css.value}>
        {row}
        {at < rows.length - 1 ? ',' : ''}
      </b>{' '}
    </Fragment>
  ));
}
