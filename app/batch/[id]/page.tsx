import { getTranslations } from 'next-intl/server';
import { type BatchAsked, BatchScreen } from '#app/batch/BatchScreen.tsx';
import { InSite } from '#app/client/InSite.tsx';
import { screenGiven } from '#app/server/screen-given.ts';
import { Words } from '#app/ui/Words.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('batch');
  return { title: t('title') };
}

type Props = { params: Promise<{ id: string }>; searchParams: Promise<BatchAsked> };

export default async function BatchPage({ params, searchParams }: Props) {
  const given = await screenGiven();
  const [{ id }, asked] = await Promise.all([params, searchParams]);
  return (
    <Words names={['batch', 'common', 'explain', 'problem', 'remedy']}>
      <InSite site={given.site}>
        <BatchScreen given={given} id={id} asked={asked} />
      </InSite>
    </Words>
  );
}
