'use client'; // knows the page to come back to
import { usePathname } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { KeyLink } from '#app/ui/KeyLink.tsx';

/** To the sign-in, and back to this page. */
export function SignInLink() {
  const t = useTranslations('setup.cannot');
  return (
    <KeyLink href={`/sign-in?next=${encodeURIComponent(usePathname())}`} kind="plain">
      {t('sign_in')}
    </KeyLink>
  );
}
