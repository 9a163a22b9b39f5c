import { type NewBatchAsked, NewBatchScreen } from '#app/batch/NewBatchScreen.tsx';
import { InSite } from '#app/client/InSite.tsx';
import { screenGiven } from '#app/server/screen-given.ts';
import { Words } from '#app/ui/Words.tsx';

export const dynamic = 'force-dynamic';

type Props = { searchParams: Promise<NewBatchAsked> };

export default async function NewBatchPage({ searchParams }: Props) {
  const given = await screenGiven();
  return (
    <Words names={['batch', 'common', 'cooling', 'judge', 'problem', 'remedy']}>
      <InSite site={given.site}>
        <NewBatchScreen given={given} asked={await searchParams} />
      </InSite>
    </Words>
  );
}
