import Link from 'next/link';
import { useTranslations } from 'next-intl';
import { countedAs } from '#app/batch/counted.ts';
import { length, type Say, timeSaid } from '#app/batch/said.ts';
import { placeName } from '#app/batch/view.ts';
import type { ScreenGiven } from '#app/client/screen.ts';
import { Cell } from '#app/ui/Cell.tsx';
import { Foot } from '#app/ui/Foot.tsx';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Mark } from '#app/ui/Mark.tsx';
import { Section } from '#app/ui/Section.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import type { Deviation } from '#lib/fold/book.ts';
import css from './deviation.module.css';
import { kindOf, sideOf } from './Head.tsx';
import { stillMissing } from './still-missing.ts';
import { aboutWhat, type DeviationView, deviationView } from './view.ts';
import { worstFirst } from './worst-first.ts';

const states = ['open', 'decided', 'closed'] as const;

/** Every deviation of the last two days, open ones worst first. */
export function DeviationsScreen({ given }: { given: ScreenGiven }) {
  const { book, locale } = given;
  const t = useTranslations('deviation');
  const common = useTranslations('common');
  const all = worstFirst(book.deviations);
  const viewOf = (deviation: Deviation) => deviationView(book, deviation, { locale, by: given.hand ?? '' });
  return (
    <Sheet>
      <Headband title={t('title')} back={{ href: '/', words: common('kitchen_now') }} />
      {all.length === 0 ? <p className={css.empty}>{t('empty')}</p> : null}
      {states.map((state) => (
        <Group key={state} title={t(state)} views={all.filter((each) => each.state === state).map(viewOf)} />
      ))}
      <Foot>
        <KeyLink href="/deviation/new" wide>
          {t('by_hand')}
        </KeyLink>
      </Foot>
    </Sheet>
  );
}

function Group({ title, views }: { title: string; views: DeviationView[] }) {
  if (views.length === 0) return null;
  return (
    <section>
      <h2 className={css.group}>{title}</h2>
      {views.map((view) => (
        <Row key={view.deviation.ref} view={view} />
      ))}
    </section>
  );
}

function Row({ view }: { view: DeviationView }) {
  const t = useTranslations('deviation');
  const say = useTranslations('common') as unknown as Say;
  const { deviation, book } = view;
  const pieces = (deviation.pieces ?? [])
    .map((number) => t('piece', { number, counted: countedAs(view.batch) }))
    .join(', ');
  const out =
    deviation.outLongestMin === null
      ? t('out.at_most_unknown')
      : t('out.at_most', { length: length(say, deviation.outLongestMin, 'up') });
  return (
    <Link href={`/deviation/${encodeURIComponent(deviation.ref)}`} prefetch={false} className={css.open}>
      <span>
        <h3>{[aboutWhat(view), pieces].filter((word) => word !== '').join(', ')}</h3>
        <span className={css.note}>
          {[t(`what.${kindOf(deviation)}`, { side: sideOf(deviation) }), placeName(book, deviation.equipment)]
            .filter((word) => word !== null)
            .join(', ')}{' '}
          {deviation.section === null ? null : <Section>{deviation.section}</Section>}
        </span>
        <br />
        <span className={css.note}>
          {t('found', { time: timeSaid(deviation.foundAt, view) })}. {out}.
        </span>
        {deviation.state !== 'open' && stillMissing(deviation).includes('cause') ? (
          <span className={css.still}>
            <Mark word="open" alone /> {t('cause_missing')}
          </span>
        ) : null}
      </span>
      {deviation.found === null ? null : (
        <Cell
          typed={deviation.found.typed}
          unit={deviation.found.unit}
          dress={deviation.found.suspect ? 'wavy' : 'cut'}
        />
      )}
    </Link>
  );
}
