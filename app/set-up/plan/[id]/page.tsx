import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { SetUpSheet } from '../../SetUpSheet.tsx';
import { setUpPage } from '../../set-up-page.ts';
import { PlanForm } from '../PlanForm.tsx';

export default async function Page({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  const { kitchen, by, cannot, was } = await setUpPage();
  const known = kitchen.plans.get(id) ?? null;
  if (id !== 'new' && known === null) notFound();
  const t = await getTranslations('setup.plan');
  const c = await getTranslations('common');
  const equipment = [...kitchen.equipment.values()]
    .filter(({ active, equipment: each }) => active || known?.equipment.includes(each))
    .map(({ equipment: each, name }) => ({ id: each, name }));
  return (
    <SetUpSheet
      title={known ? c(`step.${known.step}`) : t('new')}
      back={{ href: '/set-up/plan', words: t('title') }}
      cannot={cannot}
    >
      <PlanForm known={known} was={was('plan', id)} equipment={equipment} by={by} cannot={cannot} />
    </SetUpSheet>
  );
}
