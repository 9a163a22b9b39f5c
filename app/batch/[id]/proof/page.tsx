import { getTranslations } from 'next-intl/server';
import { type ProofAsked, ProofScreen } from '#app/batch/ProofScreen.tsx';
import { screenGiven } from '#app/server/screen-given.ts';

export const dynamic = 'force-dynamic';

export async function generateMetadata() {
  const t = await getTranslations('explain');
  return { title: t('title') };
}

type Props = { params: Promise<{ id: string }>; searchParams: Promise<ProofAsked> };

export default async function ProofPage({ params, searchParams }: Props) {
  const given = await screenGiven();
  const [{ id }, asked] = await Promise.all([params, searchParams]);
  return <ProofScreen given={given} id={id} asked={asked} />;
}
