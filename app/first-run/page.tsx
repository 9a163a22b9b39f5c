import { redirect } from 'next/navigation';
import { getLocale, getTranslations } from 'next-intl/server';
import { siteExists } from '#app/server/sites.ts';
import { zones } from '#app/set-up/kitchen/zones.ts';
import { offeredLimits } from '#app/set-up/limits/offered.ts';
import { Headband } from '#app/ui/Headband.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Words } from '#app/ui/Words.tsx';
import { DemoKey } from './DemoKey.tsx';
import { FirstRunForm } from './FirstRunForm.tsx';
import { LanguageKeys } from './LanguageKeys.tsx';
import css from './page.module.css';

/** Nothing is set up yet: a kitchen of one's own, or the invented one. */
export default async function Page() {
  if (await siteExists()) redirect('/');
  const t = await getTranslations('setup.first_run');
  const language = (await getLocale()) === 'es' ? 'es' : 'en';
  const offered = offeredLimits({ limits: new Map(), site: null });
  return (
    <Sheet width="phone">
      <Words names={['common', 'setup', 'limits', 'problem', 'remedy']}>
        <Headband title={t('title')} right={<LanguageKeys language={language} />} />
        <div className={css.intro}>
          <h2 className={css.heading}>{t('heading')}</h2>
          <p>{t('intro')}</p>
          <div className={css.open} role="img" aria-label={t('open_line')} />
        </div>
        <DemoKey />
        <FirstRunForm language={language} zones={zones(null)} offered={offered} />
      </Words>
    </Sheet>
  );
}
