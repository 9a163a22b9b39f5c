import { useTranslations } from 'next-intl';
import { HandList } from '#app/ui/HandList.tsx';
import { Key } from '#app/ui/Key.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { AsideFrame, Keys, Last } from './AsideFrame.tsx';
import type { FaceProps } from './given.ts';

/** Whose hand writes: two taps from the band. Without a secret on this device the book says "by a tap only". */
export function HandsAside({ state, act, given }: FaceProps) {
  const t = useTranslations('round');
  const common = useTranslations('common');
  return (
    <AsideFrame title={t('choose_hand')}>
      <HandList people={given.hands} chosen={state.hand} onPick={(person) => act({ do: 'hand', person })} />
      <Last>
        <Keys>
          <KeyLink kind="plain" href="/sign-in">
            {t('sign_in')}
          </KeyLink>
          <Key kind="plain" onClick={() => act({ do: 'show', face: 'entry' })}>
            {common('back')}
          </Key>
        </Keys>
      </Last>
    </AsideFrame>
  );
}
