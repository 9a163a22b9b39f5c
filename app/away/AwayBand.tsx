import { useTranslations } from 'next-intl';
import { NotSent } from '#app/outbox/NotSent.tsx';
import type { PhoneBook } from '#app/outbox/phone-store.ts';
import { Key } from '#app/ui/Key.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import type { Body } from '#shared/entries/entry.ts';
import { wallClock } from '#shared/time.ts';

type Props = { kept: PhoneBook; site: Body<'site'> | null; back: boolean };

/** Says that this is the phone's own knowledge, and how old it is. The way back is a key: nothing typed is broken off. */
export function AwayBand({ kept, site, back }: Props) {
  const t = useTranslations('kitchen.away');
  const zone = site?.zone ?? 'UTC';
  const clock = site?.clock ?? '24';
  const time = wallClock(kept.takenAt + kept.bookAhead, zone, clock);
  return (
    <>
      <Slip kind="note" bar title={t(back ? 'back' : 'no_network')}>
        <p>{t('phone_knows', { time })}</p>
        {back ? (
          <Key kind="save" onClick={() => window.location.reload()}>
            {t('go_on')}
          </Key>
        ) : null}
      </Slip>
      <NotSent site={kept.site} zone={zone} clock={clock} />
    </>
  );
}
