import { getLocale, getTranslations } from 'next-intl/server';
import { catalogueName, foodCatalogue } from '#shared/foods.ts';
import { SetUpSheet } from '../../SetUpSheet.tsx';
import { setUpPage } from '../../set-up-page.ts';
import { classLines } from '../class-lines.ts';
import { CatalogueForm } from './CatalogueForm.tsx';

/** The usual foods, class by class, with what each class decides here: many can be taken over at once. */
export default async function Page() {
  const { kitchen, by, cannot } = await setUpPage();
  const t = await getTranslations('setup.foods');
  const known = new Set(
    [...kitchen.foods.values()].flatMap(({ name, name_es: es }) => [name, es ?? name]).map(plain),
  );
  const here = foodCatalogue
    .filter(
      ({ key }) => known.has(plain(catalogueName(key, 'en'))) || known.has(plain(catalogueName(key, 'es'))),
    )
    .map(({ key }) => key);
  return (
    <SetUpSheet title={t('list_title')} back={{ href: '/set-up/foods', words: t('title') }} cannot={cannot}>
      <CatalogueForm
        by={by}
        cannot={cannot}
        here={here}
        lines={await classLines(kitchen)}
        language={(await getLocale()) === 'es' ? 'es' : 'en'}
        written={kitchen.site?.language ?? 'en'}
      />
    </SetUpSheet>
  );
}

const plain = (name: string): string => name.trim().toLowerCase();
