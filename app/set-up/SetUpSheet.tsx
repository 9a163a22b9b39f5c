import { getTranslations } from 'next-intl/server';
import type { ReactNode } from 'react';
import { Headband } from '#app/ui/Headband.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import { Words } from '#app/ui/Words.tsx';

type Props = {
  title: string;
  back: { href: string; words: string };
  cannot: string | null;
  children: ReactNode;
};

/** The sheet of one part of the set-up. */
export async function SetUpSheet({ title, back, cannot, children }: Props) {
  const t = await getTranslations('setup.cannot');
  return (
    <Sheet width="phone">
      <Headband title={title} back={back} />
      {cannot === null ? null : (
        <Slip kind="note" bar>
          <span>{cannot}</span>
          <KeyLink href="/sign-in" kind="plain">
            {t('sign_in')}
          </KeyLink>
        </Slip>
      )}
      <Words names={['common', 'setup', 'problem', 'remedy']}>{children}</Words>
    </Sheet>
  );
}
