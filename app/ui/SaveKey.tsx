import { useTranslations } from 'next-intl';
import type { ReactNode } from 'react';
import { Key } from './Key.tsx';

/** `missing`: what is still to be written first, in words; null where nothing is. */
type Props = { busy: boolean; missing: string | null; onSave: () => Promise<void>; children: ReactNode };

/** The key that writes a form in the book: dashed, with the reason in it, while it cannot; it never writes twice. */
export function SaveKey({ busy, missing, onSave, children }: Props) {
  const common = useTranslations('common');
  return (
    <Key kind="save" wide onClick={() => void onSave()} cannot={busy ? common('saving') : missing}>
      {children}
    </Key>
  );
}
