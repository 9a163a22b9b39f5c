import { useTranslations } from 'next-intl';
import { wallTime } from '#app/round/wall-time.ts';
import { Key } from '#app/ui/Key.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Mark } from '#app/ui/Mark.tsx';
import { Slip } from '#app/ui/Slip.tsx';
import css from './NotSent.module.css';
import type { Held, Outbox } from './outbox.ts';
import { useOutbox } from './useOutbox.ts';

const signedOut: ReadonlySet<string> = new Set(['nobody_signed_in', 'device_unknown']);

type Props = { site: string; zone: string; clock: '12' | '24' };

/** What is on this phone only: how many, how old, what stands in the way, and what the book refused, in its words. */
export function NotSent({ site, zone, clock }: Props) {
  const t = useTranslations('round.not_sent');
  const { now, outbox } = useOutbox(site);
  const oldest = now.held[0];
  if (outbox === null) return null;
  if (oldest === undefined)
    return now.lost === 0 ? null : (
      <Slip kind="not-sent" bar title={t('lost', { count: now.lost })}>
        <p>{t('lost_help')}</p>
      </Slip>
    );
  const fault = now.fault;
  const signIn = fault !== null && signedOut.has(fault.problem);
  const forLead = now.held.filter((held) => held.refused?.lead);
  return (
    <Slip kind="not-sent" bar>
      <Mark word="on_this_phone" />
      <div className={css.words}>
        <p>
          <b>{t('count', { count: now.held.length })}</b>
        </p>
        <p className={css.note}>
          {t('oldest', { time: wallTime(Date.parse(oldest.draft.entered_at), zone, clock) })}
        </p>
        {fault === null ? null : (
          <p className={css.note}>
            {fault.words ? `${fault.words.problem} ${fault.words.remedy}` : t('no_network')}
          </p>
        )}
        {now.durable ? null : <p className={css.note}>{t('page_only')}</p>}
        {now.lost === 0 ? null : <p className={css.note}>{t('lost', { count: now.lost })}</p>}
        {forLead.length === 0 ? null : <p className={css.note}>{t('for_lead', { count: forLead.length })}</p>}
      </div>
      {signIn ? (
        <KeyLink kind="plain" href="/sign-in">
          {t('sign_in')}
        </KeyLink>
      ) : (
        <Key kind="plain" onClick={() => void outbox.again()}>
          {t('again')}
        </Key>
      )}
      {forLead.length === 0 ? null : (
        <Key kind="plain" onClick={() => void outbox.accept(forLead.map(({ draft }) => draft.id))}>
          {t('accept')}
        </Key>
      )}
      {now.held
        .filter((held) => held.refused !== null && !held.refused.lead)
        .map((held) => (
          <Refused key={held.draft.id} held={held} outbox={outbox} />
        ))}
    </Slip>
  );
}

function Refused({ held, outbox }: { held: Held; outbox: Outbox }) {
  const t = useTranslations('round.not_sent');
  const { draft, refused } = held;
  const named = ['reading', 'note', 'round', 'amendment', 'probe_check', 'handover'] as const;
  const kind = named.find((each) => each === draft.kind) ?? 'other';
  const typed = draft.kind === 'reading' || draft.kind === 'probe_check' ? draft.body.typed : '';
  return (
    <div className={css.refused} role="alert">
      <p>
        <b>{t(`what.${kind}`, { typed })}</b>: {t(refused?.asks ? 'asks' : 'refused')}
      </p>
      <p className={css.note}>{refused?.problem}</p>
      <p className={css.note}>{refused?.remedy}</p>
      {refused?.asks ? (
        <Key kind="plain" onClick={() => void outbox.meant(draft.id)}>
          {t('meant')}
        </Key>
      ) : null}
      <Key kind="plain" onClick={() => outbox.drop(draft.id)}>
        {t(refused?.asks ? 'same' : 'drop')}
      </Key>
    </div>
  );
}
