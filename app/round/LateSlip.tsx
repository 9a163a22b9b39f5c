import { useTranslations } from 'next-intl';
import { Key } from '#app/ui/Key.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import type { FaceProps } from './given.ts';
import css from './LateSlip.module.css';
import { wallTime } from './wall-time.ts';

/** An earlier look: when it was read and when it is written, both stay. */
export function LateSlip({ state, act, given, now }: FaceProps) {
  const t = useTranslations('round');
  const at = state.exactAt ?? now - state.minutesAgo * 60_000;
  const read = wallTime(at, given.zone, given.clock);
  const late = now - at > given.planned.lateAfterMin * 60_000;
  return (
    <div className={css.late}>
      <Slip
        kind="note"
        bar
        title={t('read_written', { read, written: wallTime(now, given.zone, given.clock) })}
      >
        <p className={css.why}>{t(late ? 'marked_late' : 'judged_by', { read })}</p>
        {state.lateReason ? <p className={css.why}>{state.lateReason}</p> : null}
        {state.exactAt !== null ? (
          <Key kind="plain" onClick={() => act({ do: 'ago', minutes: 0 })}>
            {t('back_to_now')}
          </Key>
        ) : null}
      </Slip>
    </div>
  );
}
