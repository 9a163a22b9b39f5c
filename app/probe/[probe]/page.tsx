import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { loadBook } from '#app/server/book.ts';
import { entrance, handNow } from '#app/server/session.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Words } from '#app/ui/Words.tsx';
import { whenOf } from '#app/ui/when.ts';
import { wallClock } from '#shared/time.ts';
import { CheckEntry } from '../CheckEntry.tsx';
import { ProbeSays } from '../ProbeSays.tsx';
import { ProbeTitle } from '../ProbeTitle.tsx';
import css from '../page.module.css';
import { standings } from '../standing.ts';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ probe: string }> };

/** One thermometer: what its last check says, and a new check on our own keys. */
export default async function ProbePage({ params }: Props) {
  const session = await entrance();
  const book = await loadBook(session);
  const { probe } = await params;
  const standing = standings(book).find((each) => each.probe.probe === probe);
  if (standing === undefined) notFound();
  const t = await getTranslations('kitchen.probe');
  const site = book.kitchen.site;
  const zone = site?.zone ?? 'UTC';
  const clock = site?.clock ?? '24';
  const time = whenOf({ zone, clock }, book.asOf, await getTranslations('common.weekday'));
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
        <Words names={['kitchen', 'round', 'common']}>
          <CheckEntry
            key={standing.last?.entry.id ?? 'first'}
            site={session.site}
            by={handNow(session)}
            probe={{ id: probe, unit: standing.probe.unit, accuracy: standing.probe.accuracy }}
            zone={zone}
            clock={clock}
          />
        </Words>
      </main>
    </Sheet>
  );
}
