import type { ComponentProps, ReactNode } from 'react';
import { Headband } from '#app/ui/Headband.tsx';
import { Sheet } from '#app/ui/Sheet.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import { Words } from '#app/ui/Words.tsx';
import { SignInLink } from './SignInLink.tsx';

type Props = {
  title: string;
  back: { href: string; words: string };
  cannot: string | null;
  /** Namespaces that the parts of this page need besides. */
  words?: ComponentProps<typeof Words>['names'];
  children: ReactNode;
};

/** The sheet of one part of the set-up. */
export function SetUpSheet({ title, back, cannot, words = [], children }: Props) {
  return (
    <Sheet width="phone">
      <Headband title={title} back={back} />
      <Words names={['common', 'setup', 'problem', 'remedy', ...words]}>
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
