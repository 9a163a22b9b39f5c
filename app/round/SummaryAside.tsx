import { useTranslations } from 'next-intl';
import { Key } from '#app/ui/Key.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import css from './AsideFrame.module.css';
import { AsideFrame, Last } from './AsideFrame.tsx';
import type { FaceProps } from './given.ts';
import { keyOf, progress, type RoundState } from './round-state.ts';
import { WhichLook } from './WhichLook.tsx';

/** The end of the walk: what was written, what was outside its limit, what was not read and can still be. */
export function SummaryAside({ state, act, given }: FaceProps) {
  const t = useTranslations('round.summary');
  const unread = state.looks.filter((look) => progress(state, look) !== 'all');
  const under = state.saved.filter((saved) => saved.under).length;
  if (state.looks.length === 0) return <Empty home={given.home} />;
  return (
    <AsideFrame
      title={t(given.onlyOne ? 'one' : 'title')}
      foot={<Leave state={state} act={act} given={given} />}
    >
      <p>{t('wrote', { count: state.saved.length })}</p>
      {under > 0 ? <p className={css.strong}>{t('under', { count: under })}</p> : null}
      {unread.length > 0 ? <p>{t('not_read', { count: unread.length })}</p> : null}
      {state.ended && state.round !== null ? <p role="status">{t('ended')}</p> : null}
      <ul className={css.rows}>
        {unread.map((look) => (
          <li key={keyOf(look)}>
            <Key onClick={() => act({ do: 'go', index: state.looks.indexOf(look) })} sub={t('read_now')}>
              <WhichLook look={look} />
            </Key>
          </li>
        ))}
      </ul>
    </AsideFrame>
  );
}

function Leave({ state, act, given }: Pick<FaceProps, 'act' | 'given'> & { state: RoundState }) {
  const t = useTranslations('round.summary');
  const toEnd = !given.onlyOne && !state.ended && state.round !== null;
  return (
    <>
      {toEnd ? (
        <Key kind="save" onClick={() => act({ do: 'end' })}>
          {t('end')}
        </Key>
      ) : (
        <KeyLink kind="save" href={given.home}>
          {t('home')}
        </KeyLink>
      )}
      {given.missedAt !== null ? (
        <KeyLink kind="plain" href="/round/missed">
          {t('missed')}
        </KeyLink>
      ) : null}
    </>
  );
}

function Empty({ home }: { home: string }) {
  const t = useTranslations('round.summary');
  return (
    <AsideFrame title={t('empty')}>
      <p>{t('empty_why')}</p>
      <Last>
        <KeyLink kind="save" href={home}>
          {t('home')}
        </KeyLink>
      </Last>
    </AsideFrame>
  );
}
