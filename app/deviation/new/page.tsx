import { InSite } from '#app/client/InSite.tsx';
import { type NewDeviationAsked, NewDeviationScreen } from '#app/deviation/NewDeviationScreen.tsx';
import { screenGiven } from '#app/server/screen-given.ts';
import { Words } from '#app/ui/Words.tsx';

export const dynamic = 'force-dynamic';

type Props = { searchParams: Promise<NewDeviationAsked> };

export default async function NewDeviationPage({ searchParams }: Props) {
  const given = await screenGiven();
  return (
    <Words names={['batch', 'common', 'problem', 'remedy', 'deviation']}>
      <InSite site={given.site}>
        <NewDeviationScreen given={given} asked={await searchParams} />
      </InSite>
    </Words>
  );
}
