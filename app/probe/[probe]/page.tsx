import { notFound } from 'next/navigation';
import { checksOf } from '#app/server/checks-of.ts';
import { screenGiven } from '#app/server/screen-given.ts';
import { currentSession, handNow } from '#app/server/session.ts';
import { Words } from '#app/ui/Words.tsx';
import { ProbeScreen } from '../ProbeScreen.tsx';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ probe: string }> };

export default async function ProbePage({ params }: Props) {
  const given = await screenGiven();
  const session = await currentSession();
  const { probe } = await params;
  if (session === null || !given.book.kitchen.probes.has(probe)) notFound();
  const checks = await checksOf(session, probe);
  return (
    <Words names={['kitchen', 'round', 'common']}>
      <ProbeScreen given={given} probe={probe} by={handNow(session)} checks={checks} />
    </Words>
  );
}
