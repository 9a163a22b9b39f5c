import { useTranslations } from 'next-intl';
import { Key } from '#app/ui/Key.tsx';
import css from './AsideFrame.module.css';
import { AsideFrame } from './AsideFrame.tsx';
import type { FaceProps } from './given.ts';
import { keyOf, progress, type RoundState, type WalkLook } from './round-state.ts';
import { WhichLook } from './WhichLook.tsx';

/** The whole walk: what is read, what is to come, and the way to any look out of turn. */
export function WalkAside({ state, act }: FaceProps) {
  const t = useTranslations('round.walk');
  const common = useTranslations('common');
  return (
    <AsideFrame
      title={t('title')}
      foot={
        <>
          <Key kind="save" onClick={() => act({ do: 'show', face: 'summary' })}>
            {t('finish')}
          </Key>
          <Key kind="plain" onClick={() => act({ do: 'show', face: 'entry' })}>
            {common('back')}
          </Key>
        </>
      }
    >
      <ol className={css.rows}>
        {state.looks.map((look, index) => (
          <li key={keyOf(look)}>
            <Key
              kind={index === state.current ? 'normal' : 'plain'}
              onClick={() => act({ do: 'go', index })}
              sub={t(stateOf(state, look))}
            >
              <WhichLook look={look} />
            </Key>
          </li>
        ))}
      </ol>
    </AsideFrame>
  );
}

function stateOf(state: RoundState, look: WalkLook): 'done' | 'half' | 'open' | 'skipped' {
  const made = progress(state, look);
  if (made === 'all') return 'done';
  if (state.skipped.includes(keyOf(look))) return 'skipped';
  return made === 'half' ? 'half' : 'open';
}
