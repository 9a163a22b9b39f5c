import { useTranslations } from 'next-intl';
import { momentOf } from '#app/cabinet/view.ts';
import { InSite } from '#app/client/InSite.tsx';
import type { ScreenGiven } from '#app/client/screen.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { whenOf } from '#app/ui/when.ts';
import { guardsOf } from '#lib/between/probe-guard.ts';
import { allowedOf, suggestedBy } from '#lib/between/probe-record.ts';
import { profileOf } from '#lib/fold/ask.ts';
import type { Check } from '#lib/fold/book.ts';
import { wallClock } from '#shared/time.ts';
import { degrees } from '#shared/units.ts';
import { Adjust } from './Adjust.tsx';
import { CheckEntry } from './CheckEntry.tsx';
import { GuardSaid } from './GuardSaid.tsx';
import { History } from './History.tsx';
import { ProbeSays } from './ProbeSays.tsx';
import { ProbesScreen } from './ProbesScreen.tsx';
import { ProbeTitle } from './ProbeTitle.tsx';
import css from './page.module.css';
import { Suspect } from './Suspect.tsx';
import { standings } from './standing.ts';
import type { ProbeView } from './view.ts';
import { WhatItReads } from './WhatItReads.tsx';

/** `checks`: of this thermometer over a year; missing = those of the book that was given (a phone without network). */
type Props = { given: ScreenGiven; probe: string; by: string; checks?: readonly Check[] };

/** One thermometer: what its last check says, a new check on our own keys, what it reads, its checks so far. */
export function ProbeScreen({ given, probe, by, checks }: Props) {
  const { book } = given;
  const t = useTranslations('kitchen.probe');
  const weekday = useTranslations('common.weekday');
  const standing = standings(book).find((each) => each.probe.probe === probe);
  if (standing === undefined) return <ProbesScreen given={given} />;
  const site = book.kitchen.site;
  const zone = site?.zone ?? 'UTC';
  const clock = site?.clock ?? '24';
  const time = whenOf({ zone, clock }, book.asOf, weekday);
  const { last } = standing;
  const broken = last?.verdict === 'broken';
  const own = checks ?? book.checks.filter((check) => check.probe === probe);
  const allowed = allowedOf(standing.probe, profileOf(book));
  const view: ProbeView = {
    name: standing.probe.name,
    unit: standing.probe.unit,
    zone,
    clock,
    locale: given.locale,
    now: book.asOf,
  };
  const adjusted = book.kitchen.adjusted?.get(probe);
  const adjustedWords = (): string =>
    adjusted === undefined || adjusted.body.correction === null
      ? t('adjust_none')
      : t('adjust_now', {
          figure: `${String(adjusted.body.correction).replace('-', '−')}\u00a0${degrees(adjusted.body.unit)}`,
          time: momentOf(view, adjusted.at),
          by: book.kitchen.people.get(adjusted.by)?.name ?? '–',
          reason: adjusted.body.reason,
        });
  return (
    <Sheet>
      <Headband back={{ href: '/probe', words: t('title') }} clock={wallClock(book.asOf, zone, clock)} />
      <main className={css.list}>
        <ProbeTitle probe={standing.probe} />
        <ProbeSays standing={standing} now={book.asOf} time={time} />
        {broken ? (
          <KeyLink kind="save" wide href="/round">
            {t('read_again')}
          </KeyLink>
        ) : null}
        <CheckEntry
          key={standing.last?.entry.id ?? 'first'}
          site={given.site}
          by={by}
          probe={{ id: probe, unit: standing.probe.unit, accuracy: standing.probe.accuracy }}
          zone={zone}
          clock={clock}
          altitudeM={site?.altitude_m ?? null}
        />
        {last !== null && broken ? (
          <Suspect
            book={book}
            failed={last}
            lastGood={own.findLast(({ verdict, at }) => verdict === 'kept' && at < last.at) ?? null}
            view={view}
          />
        ) : null}
        <WhatItReads
          book={book}
          probe={standing.probe}
          checks={own}
          allowed={allowed}
          view={view}
          time={(ms) => momentOf(view, ms)}
        />
        <GuardSaid
          guards={guardsOf(book, standing.probe, allowed)}
          unit={standing.probe.unit}
          time={(ms) => momentOf(view, ms)}
        />
        <InSite site={given.site}>
          <Adjust
            by={by}
            probe={probe}
            unit={standing.probe.unit}
            now={adjustedWords()}
            suggested={suggestedBy(own, standing.probe)}
          />
        </InSite>
        <History probe={standing.probe} checks={own} allowed={allowed} view={view} />
      </main>
    </Sheet>
  );
}
