'use client'; // the browser prints
import { useTranslations } from 'next-intl';
import { Key } from '#app/ui/Key.tsx';

export function PrintFigures() {
  const t = useTranslations('limits.figures');
  return (
    <Key kind="save" onClick={() => window.print()}>
      {t('print')}
    </Key>
  );
}
