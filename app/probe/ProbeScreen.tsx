import { useTranslations } from 'next-intl';
import type { ScreenGiven } from '#app/client/screen.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { whenOf } from '#app/ui/when.ts';
import { wallClock } from '#shared/time.ts';
import { CheckEntry } from './CheckEntry.tsx';
import { ProbeSays } from './ProbeSays.tsx';
import { ProbesScreen } from './ProbesScreen.tsx';
import { ProbeTitle } from './ProbeTitle.tsx';
import css from './page.module.css';
import { standings } from './standing.ts';

type Props = { given: ScreenGiven; probe: string; by: string };

/** One thermometer: what its last check says, and a new check on our own keys. */
export function ProbeScreen({ given, probe, by }: Props) {
  const { book } = given;
  const t = useTranslations('kitchen.probe');
  const weekday = useTranslations('common.weekday');
  const standing = standings(book).find((each) => each.probe.probe === probe);
  if (standing === undefined) return <ProbesScreen given={given} />;
  const site = book.kitchen.site;
  const zone = site?.zone ?? 'UTC';
  const clock = site?.clock ?? '24';
  const time = whenOf({ zone, clock }, book.asOf, weekday);
  const broken = standing.last?.verdict === 'broken';
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
      </main>
    </Sheet>
  );
}
