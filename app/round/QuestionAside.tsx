import { useTranslations } from 'next-intl';
import { Key } from '#app/ui/Key.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import css from './AsideFrame.module.css';
import { AsideFrame, Keys } from './AsideFrame.tsx';
import { withSign } from './figure-words.ts';
import type { FaceProps } from './given.ts';
import type { OddFigure } from './plausible.ts';
import { type Question, unitInUse } from './round-state.ts';
import { asWritten } from './typing.ts';
import { wallTime } from './wall-time.ts';

/** Asked once, never refused: both values stand there, and nothing is written until a key is pressed. */
export function QuestionAside(props: FaceProps & { ask: Question }) {
  const { ask, given } = props;
  if (ask.about === 'figure') return <FigureQuestion {...props} ask={ask} />;
  if (ask.about === 'clock') return <ClockQuestion {...props} ask={ask} />;
  return <FutureQuestion {...props} at={wallTime(ask.at, given.zone, given.clock)} bookAt={ask.bookAt} />;
}

function FigureQuestion({ ask, act, state }: FaceProps & { ask: OddFigure }) {
  const t = useTranslations('round.question');
  const unit = unitInUse(state);
  const typed = withSign(asWritten(ask.typed), unit);
  return (
    <AsideFrame title={t(ask.suggestion === null ? 'above_plain' : 'above', { typed })}>
      <Slip kind="question">
        {ask.suggestion === null ? null : (
          <Key
            sub={t('write_this')}
            onClick={() => act({ do: 'answer', typed: ask.suggestion ?? ask.typed })}
          >
            <span className={css.big}>{withSign(ask.suggestion, unit)}</span>
          </Key>
        )}
        <Key sub={t('write_as_is')} onClick={() => act({ do: 'answer', typed: ask.typed })}>
          <span className={css.big}>{typed}</span>
        </Key>
        <Key sub={t('again_sub')} onClick={() => act({ do: 'again' })}>
          {t('again')}
        </Key>
        <p className={css.note}>
          {t(ask.kind === 'jump' ? 'why_jump' : 'why_above', { bound: withSign(ask.bound, unit) })}
        </p>
      </Slip>
    </AsideFrame>
  );
}

function ClockQuestion({ ask, act, given }: FaceProps & { ask: Extract<Question, { about: 'clock' }> }) {
  const t = useTranslations('round.question');
  const when = useTranslations('round');
  const book = wallTime(ask.bookAt, given.zone, given.clock);
  const phone = wallTime(ask.phoneAt, given.zone, given.clock);
  return (
    <AsideFrame title={t(ask.ahead ? 'clock_ahead' : 'clock_behind')}>
      <p>{t('clock_why', { phone, book })}</p>
      <Keys>
        <Key onClick={() => act({ do: 'clock', trust: 'book' })}>{t('clock_book', { book })}</Key>
        {ask.ahead ? null : (
          <Key onClick={() => act({ do: 'clock', trust: 'phone' })}>{t('clock_phone', { phone })}</Key>
        )}
        <Key kind="plain" onClick={() => act({ do: 'show', face: 'when' })} sub={when('earlier_sub')}>
          {when('earlier')}
        </Key>
      </Keys>
    </AsideFrame>
  );
}

function FutureQuestion({ act, given, at, bookAt }: FaceProps & { at: string; bookAt: number }) {
  const t = useTranslations('round.question');
  const round = useTranslations('round');
  return (
    <AsideFrame title={t('future', { time: at })}>
      <p>{t('future_why', { book: wallTime(bookAt, given.zone, given.clock) })}</p>
      <Keys>
        <Key onClick={() => act({ do: 'clock', trust: 'book' })}>{round('back_to_now')}</Key>
        <Key kind="plain" onClick={() => act({ do: 'show', face: 'when' })} sub={round('earlier_sub')}>
          {round('earlier')}
        </Key>
      </Keys>
    </AsideFrame>
  );
}
