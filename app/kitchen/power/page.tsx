import { getTranslations } from 'next-intl/server';
import { InSite } from '#app/client/InSite.tsx';
import { PowerScreen } from '#app/science/PowerScreen.tsx';
import { screenGiven } from '#app/server/screen-given.ts';
import { Words } from '#app/ui/Words.tsx';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('science.power');
  return { title: t('title') };
}

type Props = { searchParams: Promise<{ back?: string }> };

export default async function PowerPage({ searchParams }: Props) {
  const given = await screenGiven();
  const { back } = await searchParams;
  return (
    <Words names={['science', 'batch', 'common', 'problem', 'remedy']}>
      <InSite site={given.site}>
        <PowerScreen given={given} back={back === '1'} />
      </InSite>
    </Words>
  );
}
