import { useTranslations } from 'next-intl';
import { NotSent } from '#app/outbox/NotSent.tsx';
import type { PhoneBook } from '#app/outbox/phone-store.ts';
import { Key } from '#app/ui/Key.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import type { Body } from '#shared/entries/entry.ts';
import { wallClock } from '#shared/time.ts';
import type { Place } from './place-of.ts';

/** `screen` is the one below: some show by themselves what is not sent, and the round has no room to spare. */
type Props = { kept: PhoneBook; site: Body<'site'> | null; back: boolean; screen: Place['screen'] };

const showsNotSent: ReadonlySet<Place['screen']> = new Set(['kitchen', 'round', 'probe']);

/** Says that this is the phone's own knowledge, and how old it is. The way back is a key: nothing typed is broken off. */
export function AwayBand({ kept, site, back, screen }: Props) {
  const t = useTranslations('kitchen.away');
  const zone = site?.zone ?? 'UTC';
  const clock = site?.clock ?? '24';
  const time = wallClock(kept.takenAt + kept.bookAhead, zone, clock);
  return (
    <>
      <Slip kind="note" bar title={t(back ? 'back' : 'no_network')}>
        {screen === 'round' ? null : <p>{t('phone_knows', { time })}</p>}
        {back ? (
          <Key kind="save" onClick={() => window.location.reload()}>
            {t('go_on')}
          </Key>
        ) : null}
      </Slip>
      {showsNotSent.has(screen) ? null : <NotSent site={kept.site} zone={zone} clock={clock} />}
    </>
  );
}
