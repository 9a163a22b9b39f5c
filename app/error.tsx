'use client'; // the page server asks it of what is shown in place of a page that failed
import { useTranslations } from 'next-intl';
import { Key } from '#app/ui/Key.tsx';
import { Lost } from '#app/ui/Lost.tsx';

/** A page that failed, as when the database is away: nothing that was written is lost, and it can be asked again. */
export default function Fault() {
  const t = useTranslations('parts.fault');
  return (
    <Lost why="fault">
      <Key kind="save" wide onClick={() => window.location.reload()}>
        {t('again')}
      </Key>
    </Lost>
  );
}
