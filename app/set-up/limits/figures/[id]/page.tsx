import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { Foot } from '#app/ui/Foot.tsx';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Words } from '#app/ui/Words.tsx';
import { limitsBy } from '#lib/fold/limits-of.ts';
import { setUpPage } from '../../../set-up-page.ts';
import { LimitsFigures } from '../../LimitsFigures.tsx';
import { PrintFigures } from './PrintFigures.tsx';
import css from './page.module.css';

/** All figures of one profile, to read or to print: published, or made in this kitchen. */
export default async function Page({ params }: { params: Promise<{ id: string }> }) {
  const { kitchen } = await setUpPage();
  const { profile, published, local } = limitsBy(kitchen, (await params).id);
  if (profile === null || published === null) notFound();
  const t = await getTranslations('limits');
  const c = await getTranslations('common');
  return (
    <Sheet width="tablet">
      <Headband title={t('title')} back={{ href: '/set-up/limits', words: t('figures.back') }} />
      <main className={css.page}>
        <h2 className={css.name}>{t('figures.of', { name: profile.name })}</h2>
        <p className={css.note}>
          {local === null ? null : `${t('made.over', { parent: published.name })} `}
          {published.place} · {published.edition}. {t(`force_says.${published.force}`)} {c('local_codes')}
        </p>
        <LimitsFigures profile={profile} />
      </main>
      <Words names={['limits']}>
        <Foot>
          <PrintFigures />
          <KeyLink kind="plain" href="/set-up/limits">
            {c('back')}
          </KeyLink>
        </Foot>
      </Words>
    </Sheet>
  );
}
