import { type NextAsked, NextScreen } from '#app/batch/NextScreen.tsx';
import { InSite } from '#app/client/InSite.tsx';
import { screenGiven } from '#app/server/screen-given.ts';
import { Words } from '#app/ui/Words.tsx';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ id: string }>; searchParams: Promise<NextAsked> };

export default async function NextPage({ params, searchParams }: Props) {
  const given = await screenGiven();
  const [{ id }, asked] = await Promise.all([params, searchParams]);
  return (
    <Words names={['batch', 'common', 'cooling', 'judge', 'problem', 'remedy']}>
      <InSite site={given.site}>
        <NextScreen given={given} id={id} asked={asked} />
      </InSite>
    </Words>
  );
}
