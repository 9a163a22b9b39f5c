'use client';
// A client island: two people press their own key, one after the other, and what was said is typed.

import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { draft } from '#app/client/post-entries.ts';
import { NotSent } from '#app/outbox/NotSent.tsx';
import { writeAndThen } from '#app/outbox/when-sent.ts';
import { wallTime } from '#app/round/wall-time.ts';
import { HandList, type HandOffered } from '#app/ui/HandList.tsx';
import { Key } from '#app/ui/Key.tsx';
import css from './page.module.css';

type Props = {
  site: string;
  from: string | null;
  people: HandOffered[];
  openItems: string[];
  lang: 'en' | 'es';
  zone: string;
  clock: '12' | '24';
};

/** Said aloud, then the fold: the one who leaves presses first, the one who stays takes it with a name. */
export function HandOver({ site, from: at, people, openItems, lang, zone, clock }: Props) {
  const t = useTranslations('shift');
  const router = useRouter();
  const [text, setText] = useState('');
  const [from, setFrom] = useState(at);
  const [to, setTo] = useState<string | null>(null);
  const [choosing, setChoosing] = useState<'from' | 'to' | null>(null);
  const [handedAt, setHandedAt] = useState<number | null>(null);
  const [written, setWritten] = useState<'no' | 'going' | 'in_the_book'>('no');
  const giver = people.find((p) => p.id === from);
  const taker = people.find((p) => p.id === to);

  const take = (): void => {
    if (to === null) return;
    setWritten('going');
    const body = { from, to, open_items: openItems, text: text.trim() === '' ? null : text.trim(), lang };
    writeAndThen(site, [draft('handover', body, { by: to })], () => {
      setWritten('in_the_book');
      router.refresh();
    });
  };

  return (
    <>
      <NotSent site={site} zone={zone} clock={clock} />
      <section className={css.say}>
        <h2>
          <label htmlFor="said">{t('said_aloud')}</label>
        </h2>
        <textarea
          id="said"
          rows={3}
          maxLength={2000}
          value={text}
          disabled={handedAt !== null}
          placeholder={t('said_hint')}
          onChange={(event) => setText(event.target.value)}
        />
      </section>
      <p className={css.fold}>
        <span>{t('fold')}</span>
      </p>
      {choosing !== null ? (
        <section className={css.say}>
          <h2>{t(choosing === 'from' ? 'choose_from' : 'choose')}</h2>
          <HandList
            people={people.filter((p) => choosing === 'from' || p.id !== from)}
            chosen={choosing === 'from' ? from : to}
            onPick={(person) => {
              if (choosing === 'from') setFrom(person);
              else setTo(person);
              setChoosing(null);
            }}
          />
        </section>
      ) : null}
      <div className={css.signs}>
        <Key
          kind={handedAt === null ? 'save' : 'normal'}
          down={handedAt !== null}
          onClick={() => (giver ? setHandedAt(handedAt === null ? Date.now() : null) : setChoosing('from'))}
          sub={
            handedAt === null
              ? (giver?.name ?? t('choose_from'))
              : t('handed_over', { time: wallTime(handedAt, zone, clock) })
          }
        >
          {giver?.initials ?? '–'} {handedAt === null ? t('hand_over') : ''}
        </Key>
        {taker ? (
          <Key
            kind="save"
            onClick={take}
            sub={taker.name}
            cannot={written === 'going' ? t('on_its_way') : handedAt === null ? t('first_hand_over') : null}
          >
            {taker.initials} {t('i_have_it')}
          </Key>
        ) : (
          <Key onClick={() => setChoosing('to')}>{t('choose')}</Key>
        )}
        {taker && written === 'no' ? (
          <Key kind="plain" onClick={() => setChoosing('to')}>
            {t('choose')}
          </Key>
        ) : null}
      </div>
      {written === 'in_the_book' ? <p role="status">{t('taken', { name: taker?.name ?? '' })}</p> : null}
    </>
  );
}
