import { useTranslations } from 'next-intl';
import { Headband } from '#app/ui/Headband.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import css from './away.module.css';

/** This phone never had the book of a kitchen, or its store was emptied. */
export function Nothing() {
  const t = useTranslations('kitchen.away');
  return (
    <Sheet>
      <Headband title={t('no_network')} />
      <main className={css.words}>
        <p>{t('nothing_known')}</p>
        <Key kind="save" wide onClick={() => window.location.reload()}>
          {t('try_again')}
        </Key>
      </main>
    </Sheet>
  );
}
