import { getTranslations } from 'next-intl/server';
import { SetUpSheet } from '../SetUpSheet.tsx';
import { setUpPage } from '../set-up-page.ts';
import { ThingList } from '../ThingList.tsx';

export default async function Page() {
  const { kitchen, cannot } = await setUpPage();
  const t = await getTranslations('setup');
  const c = await getTranslations('common');
  const things = [...kitchen.plans.values()].map((plan) => {
    const places = plan.equipment.map((id) => kitchen.equipment.get(id)?.name ?? c('not_known'));
    const often = [
      plan.every_min === null ? '' : t('plan.every_short', { minutes: plan.every_min }),
      plan.at_most_min === null ? '' : t('plan.at_most_short', { minutes: plan.at_most_min }),
      plan.checkpoints_min.length === 0
        ? ''
        : t('plan.checkpoints_short', { list: plan.checkpoints_min.join(', ') }),
    ];
    const note = [places.join(', ') || t('plan.everywhere'), ...often].filter(Boolean).join(' · ');
    return { id: plan.plan, name: c(`step.${plan.step}`), active: plan.active, note };
  });
  return (
    <SetUpSheet title={t('plan.title')} back={{ href: '/set-up', words: t('title') }} cannot={cannot}>
      <ThingList base="/set-up/plan" things={things} empty={t('plan.empty')} add={t('plan.add')} />
    </SetUpSheet>
  );
}
