import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import { SetUpSheet } from './SetUpSheet.tsx';
import { setUpPage } from './set-up-page.ts';
import css from './ThingList.module.css';

/** All that can be set up, with how much of it there is. */
export default async function Page() {
  const { kitchen, cannot } = await setUpPage();
  const t = await getTranslations('setup');
  const c = await getTranslations('common');
  const l = await getTranslations('limits');
  const h = await getTranslations('health');
  const inUse = (things: ReadonlyMap<string, { active: boolean }>): string => {
    const count = [...things.values()].filter(({ active }) => active).length;
    return count === 0 ? t('none_yet') : t('in_use', { count });
  };
  const parts = [
    { href: '/set-up/kitchen', words: t('kitchen.title'), note: kitchen.site?.name ?? t('none_yet') },
    { href: '/set-up/limits', words: l('title'), note: l('note') },
    { href: '/set-up/equipment', words: t('equipment.title'), note: inUse(kitchen.equipment) },
    { href: '/set-up/probes', words: t('probes.title'), note: inUse(kitchen.probes) },
    { href: '/set-up/foods', words: t('foods.title'), note: inUse(kitchen.foods) },
    { href: '/set-up/people', words: t('people.title'), note: inUse(kitchen.people) },
    { href: '/set-up/plan', words: t('plan.title'), note: inUse(kitchen.plans) },
    { href: '/set-up/house', words: t('house.title'), note: t('house.note') },
    { href: '/people', words: t('secrets'), note: t('secrets_note') },
    { href: '/paper', words: t('paper.title'), note: t('paper.note') },
    { href: '/reach', words: t('reach'), note: t('reach_note') },
    { href: '/health', words: h('title'), note: h('note') },
  ];
  return (
    <SetUpSheet title={t('title')} back={{ href: '/', words: c('kitchen_now') }} cannot={cannot}>
      <p className={css.empty}>{t('each_change')}</p>
      <ul className={css.list}>
        {parts.map(({ href, words, note }) => (
          <li key={href}>
            <Link href={href} prefetch={false} className={css.thing}>
              <span className={css.name}>{words}</span>
              <span className={css.note}>{note}</span>
            </Link>
          </li>
        ))}
      </ul>
      <p className={css.empty}>{c('local_codes')}</p>
    </SetUpSheet>
  );
}
