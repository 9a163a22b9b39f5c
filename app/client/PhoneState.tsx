'use client'; // what only the browser knows: whether its address is secure, and which edition it runs
import { useTranslations } from 'next-intl';
import { useState, useSyncExternalStore } from 'react';
import { useOutbox } from '#app/outbox/useOutbox.ts';
import { Key } from '#app/ui/Key.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Mark } from '#app/ui/Mark.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import { takeEdition, useNewEdition } from './new-edition.ts';
import css from './PhoneState.module.css';

const never = (): (() => void) => () => {};

/** Says on kitchen now, and so never on a round, what this phone lacks: a secure address, or the newest edition. */
export function PhoneState({ site }: { site: string }) {
  const insecure = useSyncExternalStore(
    never,
    () => !window.isSecureContext,
    () => false,
  );
  return (
    <>
      {insecure ? <NotSecure /> : null}
      <NewEdition site={site} />
    </>
  );
}

function NotSecure() {
  const t = useTranslations('kitchen.away');
  return (
    <Slip kind="note" bar>
      <Mark word="could_not" />
      <div className={css.words}>
        <p>
          <b>{t('unavailable')}</b>
        </p>
        <p className={css.note}>{t('unavailable_help')}</p>
      </div>
      <KeyLink kind="plain" href="/reach/secure">
        {t('how')}
      </KeyLink>
    </Slip>
  );
}

/** Taken by a tap only. What was written is in the phone's store by then, or the key says what it waits for. */
function NewEdition({ site }: { site: string }) {
  const t = useTranslations('kitchen.away');
  const waiting = useNewEdition();
  const { now } = useOutbox(site);
  const [round, setRound] = useState(false);
  if (waiting === null) return null;
  const onPageOnly = now.held.some(({ kept }) => kept !== true);
  const take = async (): Promise<void> => setRound((await takeEdition(waiting)) === 'round');
  return (
    <Slip kind="note" bar title={t('new_edition')}>
      {round ? <p className={css.note}>{t('edition_round')}</p> : null}
      <Key
        kind="plain"
        cannot={onPageOnly ? t('edition_page_only') : null}
        onClick={() => {
          void take();
        }}
      >
        {t('take_edition')}
      </Key>
    </Slip>
  );
}
