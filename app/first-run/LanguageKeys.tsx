'use client'; // sets the language of this device
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { post } from '#app/client/post-entries.ts';
import { language as languages } from '#shared/entries/kind.ts';
import css from './page.module.css';

const own = { en: 'English', es: 'Español' } as const; // each in its own language, whatever is set

/** The language of this device: the first thing that a newcomer may need. */
export function LanguageKeys({ language }: { language: 'en' | 'es' }) {
  const t = useTranslations('setup.first_run');
  const router = useRouter();
  const choose = async (chosen: 'en' | 'es') => {
    await post('/api/language', { language: chosen });
    router.refresh();
  };
  return (
    <fieldset className={css.languages} aria-label={t('language')}>
      {languages.options.map((one) => (
        <button
          key={one}
          type="button"
          lang={one}
          className={css.language}
          aria-pressed={one === language}
          onClick={() => choose(one)}
        >
          {own[one]}
        </button>
      ))}
    </fieldset>
  );
}
