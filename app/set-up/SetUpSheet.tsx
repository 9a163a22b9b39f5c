import type { ReactNode } from 'react';
import { Headband } from '#app/ui/Headband.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import { Words } from '#app/ui/Words.tsx';
import { SignInLink } from './SignInLink.tsx';

type Props = {
  title: string;
  back: { href: string; words: string };
  cannot: string | null;
  children: ReactNode;
};

/** The sheet of one part of the set-up. */
export function SetUpSheet({ title, back, cannot, children }: Props) {
  return (
    <Sheet width="phone">
      <Headband title={title} back={back} />
      <Words names={['common', 'setup', 'problem', 'remedy']}>
        {cannot === null ? null : (
          <Slip kind="note" bar>
            <span>{cannot}</span>
            <SignInLink />
          </Slip>
        )}
        {children}
      </Words>
    </Sheet>
  );
}
