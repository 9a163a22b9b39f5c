import { useTranslations } from 'next-intl';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import css from './batch.module.css';

/** The batch that was asked for is not in the book, or is older than what the kitchen screens look back at. */
export function Missing() {
  const t = useTranslations('batch');
  const common = useTranslations('common');
  return (
    <Sheet>
      <Headband title={t('not_found')} back={{ href: '/', words: common('kitchen_now') }} />
      <div className={css.empty}>
        <p>{t('not_found_help')}</p>
        <KeyLink href="/batch" wide>
          {t('title')}
        </KeyLink>
      </div>
    </Sheet>
  );
}
