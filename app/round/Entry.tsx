import { useTranslations } from 'next-intl';
import { useEffect } from 'react';
import type { Held } from '#app/outbox/outbox.ts';
import { Figure } from '#app/ui/Figure.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Pad } from '#app/ui/Pad.tsx';
import { PlaceDrawing } from '#app/ui/PlaceDrawing.tsx';
import { type MinutesAgo, TimeStrip } from '#app/ui/TimeStrip.tsx';
import css from './Entry.module.css';
import { short } from './figure-words.ts';
import type { FaceProps } from './given.ts';
import { JustSaved } from './JustSaved.tsx';
import { LateSlip } from './LateSlip.tsx';
import { ProbeKey } from './ProbeKey.tsx';
import { spotsSaved, unitInUse } from './round-state.ts';
import type { PadKey } from './typing.ts';
import type { Awake } from './useWakeLock.ts';
import { Where } from './Where.tsx';
import { wallTime } from './wall-time.ts';

type Props = FaceProps & { held: readonly Held[]; awake: Awake };

/** The pad and the save keys of one look. A tap does not move the focus, so that Enter still saves. */
export function Entry({ state, act, given, now, held, awake }: Props) {
  const t = useTranslations('round');
  const look = state.looks[state.current];
  useEffect(() => {
    if (state.current >= 0) window.scrollTo(0, 0);
  }, [state.current]);
  if (look === undefined) return null;
  const press = (key: PadKey) => () => act({ do: 'key', key });
  const typing = state.typed !== '';
  const moved = state.minutesAgo > 0 || state.exactAt !== null;
  return (
    <main className={css.entry} onMouseDown={(event) => event.preventDefault()}>
      <Where state={state} look={look} />
      <div className={css.typing}>
        <output className={state.typed.length > 4 ? css.long : css.figure} aria-live="polite">
          {typing ? <Figure typed={state.typed} unit={unitInUse(state)} size="entry" withUnit /> : null}
          {!typing && state.saved.length > 0 ? <JustSaved state={state} given={given} held={held} /> : null}
          {!typing && state.saved.length === 0 ? (
            <span className={css.hint}>{awake === 'not_here' ? t('not_awake') : t('type_it')}</span>
          ) : null}
        </output>
        <ProbeKey state={state} given={given} onPress={() => act({ do: 'show', face: 'probes' })} />
      </div>
      {state.problem === 'no_figure' ? (
        <p className={css.problem} role="alert">
          {t('no_figure')}
        </p>
      ) : null}
      <TimeStrip
        value={(state.exactAt === null ? state.minutesAgo : -1) as MinutesAgo}
        onChange={(minutes) => act({ do: 'ago', minutes })}
        now={wallTime(now, given.zone, given.clock)}
      />
      {moved ? <LateSlip state={state} act={act} given={given} now={now} /> : null}
      <Pad
        onDigit={(digit) => act({ do: 'key', key: digit as PadKey })}
        onPoint={press('.')}
        onMinus={press('-')}
        onClear={press('clear')}
        onBack={press('back')}
      />
      <SaveKeys state={state} act={act} />
      <Beside state={state} act={act} />
    </main>
  );
}

function SaveKeys({ state, act }: Pick<FaceProps, 'state' | 'act'>) {
  const t = useTranslations('round');
  const look = state.looks[state.current];
  if (look === undefined) return null;
  const saved = spotsSaved(state, look);
  return (
    <div className={css.saves} data-keys={look.spots.length}>
      {look.spots.map((spot) => (
        <Key
          key={spot}
          kind="save"
          onClick={() => act({ do: 'save', spot })}
          cannot={saved.includes(spot) ? t('saved_spot') : null}
        >
          {spot === 'edge' || spot === 'core' ? (
            <span className={css.drawing}>
              <PlaceDrawing spot={spot} />
            </span>
          ) : null}
          {t(`save.${spot}`)}
        </Key>
      ))}
    </div>
  );
}

function Beside({ state, act }: Pick<FaceProps, 'state' | 'act'>) {
  const t = useTranslations('round');
  const spotWords = useTranslations('common.spot');
  const last = state.saved.at(-1);
  const piece = last?.key.split('/')[2];
  const spot = last?.spot ? spotWords(last.spot) : '';
  return (
    <div className={css.beside}>
      <Key kind="plain" onClick={() => act({ do: 'show', face: 'could_not' })}>
        {t('could_not')}
      </Key>
      <Key kind="plain" onClick={() => act({ do: 'show', face: 'when' })} sub={t('earlier_sub')}>
        {t('earlier')}
      </Key>
      <Key
        kind="plain"
        onClick={() => act({ do: 'undo' })}
        cannot={last === undefined ? t('nothing_to_undo') : null}
        sub={piece && piece !== '-' ? t('place', { piece, spot }) : spot}
      >
        {t('undo', { figure: last === undefined ? '' : short(last.typed) })}
      </Key>
    </div>
  );
}
