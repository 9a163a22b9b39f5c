import { getLocale, getTranslations } from 'next-intl/server';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { SetUpSheet } from '../SetUpSheet.tsx';
import { setUpPage } from '../set-up-page.ts';
import css from '../ThingList.module.css';
import { ThingList } from '../ThingList.tsx';

export default async function Page() {
  const { kitchen, cannot } = await setUpPage();
  const t = await getTranslations('setup');
  const c = await getTranslations('common');
  const spanish = (await getLocale()) === 'es';
  const things = [...kitchen.foods.values()].map((food) => ({
    id: food.food,
    name: (spanish ? food.name_es : null) ?? food.name,
    active: food.active,
    note: `${c(`food_class.${food.class}`)}, ${c(`counted.${food.counted}`)}`,
  }));
  return (
    <SetUpSheet title={t('foods.title')} back={{ href: '/set-up', words: t('title') }} cannot={cannot}>
      <div className={css.empty}>
        <KeyLink href="/set-up/foods/catalogue" wide>
          {t('foods.from_list')}
        </KeyLink>
      </div>
      <ThingList base="/set-up/foods" things={things} empty={t('foods.empty')} add={t('foods.add')} />
    </SetUpSheet>
  );
}
