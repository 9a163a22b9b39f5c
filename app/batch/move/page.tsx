import { MoveScreen } from '#app/batch/MoveScreen.tsx';
import { InSite } from '#app/client/InSite.tsx';
import { screenGiven } from '#app/server/screen-given.ts';
import { Words } from '#app/ui/Words.tsx';

export const dynamic = 'force-dynamic';

type Props = { searchParams: Promise<{ equipment?: string }> };

export default async function MovePage({ searchParams }: Props) {
  const given = await screenGiven();
  const { equipment } = await searchParams;
  return (
    <Words names={['batch', 'common', 'problem', 'remedy']}>
      <InSite site={given.site}>
        <MoveScreen given={given} equipment={equipment} />
      </InSite>
    </Words>
  );
}
