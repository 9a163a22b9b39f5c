import { useTranslations } from 'next-intl';
import { Key } from '#app/ui/Key.tsx';
import type { Spot } from '#shared/entries/step-name.ts';
import { AsideFrame, Keys, Last } from './AsideFrame.tsx';
import type { FaceProps } from './given.ts';

/** Whether the figure stayed as long as the rule asks: one tap, and an unknown stays unknown. */
export function HeldAside({ act, spot, seconds }: FaceProps & { spot: Spot; seconds: number }) {
  const t = useTranslations('round.held');
  return (
    <AsideFrame title={t('title', { seconds })}>
      <Keys>
        <Key kind="save" onClick={() => act({ do: 'held', spot, heldS: seconds })}>
          {t('yes', { seconds })}
        </Key>
        <Key sub={t('no_sub')} onClick={() => act({ do: 'held', spot, heldS: null })}>
          {t('no')}
        </Key>
      </Keys>
      <Last>
        <Key kind="plain" onClick={() => act({ do: 'show', face: 'entry' })}>
          {t('back')}
        </Key>
      </Last>
    </AsideFrame>
  );
}
