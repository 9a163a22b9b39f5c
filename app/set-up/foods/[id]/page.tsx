import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { SetUpSheet } from '../../SetUpSheet.tsx';
import { setUpPage } from '../../set-up-page.ts';
import { classLines } from '../class-lines.ts';
import { FoodForm } from '../FoodForm.tsx';

export default async function Page({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  const { kitchen, by, cannot, was } = await setUpPage();
  const known = kitchen.foods.get(id) ?? null;
  if (id !== 'new' && known === null) notFound();
  const t = await getTranslations('setup.foods');
  return (
    <SetUpSheet
      title={known?.name ?? t('new')}
      back={{ href: '/set-up/foods', words: t('title') }}
      cannot={cannot}
    >
      <FoodForm
        known={known}
        was={was('food', id)}
        by={by}
        cannot={cannot}
        lines={await classLines(kitchen)}
      />
    </SetUpSheet>
  );
}
