import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { Figure } from '#app/ui/Figure.tsx';
import { Key } from '#app/ui/Key.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Section } from '#app/ui/Section.tsx';
import { StopList } from '#app/ui/StopList.tsx';
import css from './AsideFrame.module.css';
import { AsideFrame, Beside, Last } from './AsideFrame.tsx';
import { withSign } from './figure-words.ts';
import type { FaceProps } from './given.ts';
import { keyOf, type Saved } from './round-state.ts';
import { unreadHere } from './round-step.ts';
import { wallTime } from './wall-time.ts';

/** A figure outside the limit: stop, tag, call the one who decides, then read every piece, in this order. */
export function StopAside({ state, act, given, saved }: FaceProps & { saved: Saved }) {
  const t = useTranslations('round.stop');
  const round = useTranslations('round');
  const spotWords = useTranslations('common.spot');
  const [said, setSaid] = useState(false);
  const call = useCall(given);
  const look = state.looks.find((each) => keyOf(each) === saved.key);
  if (look === undefined) return null;
  const unread = unreadHere(state);
  const spot = saved.spot === null ? '' : spotWords(saved.spot);
  const place = look.piece === null ? spot : round('place', { piece: look.piece, spot });
  const over = look.limit?.comparison === 'at_or_below';
  const time = wallTime(saved.at, given.zone, given.clock);
  const unanswered = (): void => {
    act({ do: 'unanswered', text: t('unanswered_note', { name: given.decider?.name ?? '' }) });
    setSaid(true);
  };
  return (
    <AsideFrame title={look.equipmentName}>
      <p>
        <Figure typed={saved.typed} unit={saved.unit} dress="cut" withUnit />
      </p>
      <StopList
        stops={[
          { title: t('stop', { place: look.equipmentName }) },
          {
            title: look.piece === null ? t('tag_pan') : t('tag', { piece: look.piece }),
            note: look.piece === null ? undefined : t('tag_note'),
          },
          call,
          { title: t('read'), note: t('read_note', { count: unread }) },
        ]}
      />
      <p className={css.note}>
        {t(over ? 'over' : 'under', { figure: withSign(saved.typed, saved.unit), place, time })}{' '}
        {look.limit ? <Section>{look.limit.section}</Section> : null}
      </p>
      <Last>
        {unread > 0 ? (
          <Key kind="save" wide onClick={() => act({ do: 'read_every_piece' })}>
            {t('go')}
          </Key>
        ) : (
          <Key kind="save" wide onClick={() => act({ do: 'read_every_piece' })}>
            {t('go_on')}
          </Key>
        )}
        <Beside>
          {given.decider === null ? null : (
            <Key kind="plain" onClick={unanswered} cannot={said ? t('unanswered_done') : null}>
              {t('unanswered')}
            </Key>
          )}
          <Key kind="plain" onClick={() => act({ do: 'undo' })}>
            {t('correct')}
          </Key>
          {look.batch === null ? null : (
            <KeyLink kind="plain" href={`/batch/${look.batch}`}>
              {look.batchName ?? look.food}
            </KeyLink>
          )}
        </Beside>
      </Last>
    </AsideFrame>
  );
}

function useCall({ decider }: FaceProps['given']) {
  const t = useTranslations('round.stop');
  const role = useTranslations('common.role');
  if (decider === null) return { title: t('call_nobody'), note: t('call_nobody_note') };
  const title = t('call', { name: decider.name, role: role(decider.role as 'manager') });
  if (decider.phone === null) return { title, note: t('call_no_number') };
  const href = `tel:${decider.phone.replace(/[^\d+]/g, '')}`;
  return { title, note: t('call_note', { phone: decider.phone }), href };
}
