'use client'; // the browser prints
import { useTranslations } from 'next-intl';
import { Key } from '#app/ui/Key.tsx';

export function PrintKey() {
  const t = useTranslations('setup.paper');
  return (
    <Key kind="save" onClick={() => window.print()}>
      {t('print')}
    </Key>
  );
}
