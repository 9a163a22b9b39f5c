import { getTranslations } from 'next-intl/server';
import { type BatchAsked, BatchScreen } from '#app/batch/BatchScreen.tsx';
import { readingRows } from '#app/batch/reading-rows.ts';
import { InSite } from '#app/client/InSite.tsx';
import { getDb } from '#app/server/db.ts';
import { screenGiven } from '#app/server/screen-given.ts';
import { Words } from '#app/ui/Words.tsx';
import { clocksOff } from '#db/device-clock.ts';
import { speaksUp } from '#db/health-findings.ts';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('batch');
  return { title: t('title') };
}

type Props = { params: Promise<{ id: string }>; searchParams: Promise<BatchAsked> };

export default async function BatchPage({ params, searchParams }: Props) {
  const given = await screenGiven();
  const [{ id }, asked] = await Promise.all([params, searchParams]);
  const batch = given.book.batches.get(id);
  const ids = batch === undefined ? [] : readingRows(given.book, batch).map((row) => row.id);
  const off = await clocksOff(await getDb(), given.site, ids, speaksUp.deviceClockMs);
  return (
    <Words names={['batch', 'common', 'explain', 'problem', 'remedy']}>
      <InSite site={given.site}>
        <BatchScreen given={given} id={id} asked={asked} clocksOff={off} />
      </InSite>
    </Words>
  );
}
