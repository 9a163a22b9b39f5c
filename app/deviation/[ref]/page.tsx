import { getTranslations } from 'next-intl/server';
import { InSite } from '#app/client/InSite.tsx';
import { DeviationScreen } from '#app/deviation/DeviationScreen.tsx';
import { screenGiven } from '#app/server/screen-given.ts';
import { Words } from '#app/ui/Words.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('deviation');
  return { title: t('title') };
}

type Props = { params: Promise<{ ref: string }> };

export default async function DeviationPage({ params }: Props) {
  const given = await screenGiven();
  const { ref } = await params;
  return (
    <Words names={['deviation', 'batch', 'common', 'people', 'problem', 'remedy']}>
      <InSite site={given.site}>
        <DeviationScreen given={given} reference={decodeURIComponent(ref)} />
      </InSite>
    </Words>
  );
}
