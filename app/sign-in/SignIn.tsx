'use client'; // names and keys that are pressed
import { useTranslations } from 'next-intl';
import { useEffect, useRef, useState } from 'react';
import { post } from '#app/client/post-entries.ts';
import { SecretEntry } from '#app/people/SecretEntry.tsx';
import { saidToHand } from '#app/people/said-to-hand.ts';
import { HandList } from '#app/ui/HandList.tsx';
import { Key } from '#app/ui/Key.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import type { Role } from '#shared/entries/person.ts';
import { leastSecretOf } from '#shared/requests/secret.ts';
import css from './SignIn.module.css';

export type PersonHere = {
  id: string;
  name: string;
  initials: string;
  role: Role;
  note: string;
  hasSecret: boolean;
};

type Props = {
  people: PersonHere[];
  chosen: string | null;
  next: string; // path to go to
  /** Somebody has entered a secret here this shift: others may write by name only, and secrets may be set. */
  someoneIn: boolean;
  standBy: string[]; // whose first secret may be set here now
};

/** Whose hand, then that hand's secret. */
export function SignIn({ people, chosen, next, someoneIn, standBy }: Props) {
  const t = useTranslations('people.sign_in');
  const [picked, setPicked] = useState(chosen);
  const person = people.find(({ id }) => id === picked);
  const secret = useRef<HTMLElement>(null);
  useEffect(() => {
    if (picked === null) return;
    secret.current?.focus({ preventScroll: true });
    secret.current?.scrollIntoView({ block: 'nearest' }); // on a phone the keys are below the names
  }, [picked]);
  return (
    <div className={css.in}>
      <section className={css.people}>
        <h1>{t('title')}</h1>
        {people.length === 0 ? <p>{t('nobody')}</p> : null}
        <HandList people={people} chosen={picked} onPick={setPicked} />
      </section>
      <section className={css.secret} ref={secret} tabIndex={-1}>
        {person === undefined ? (
          <p className={css.choose}>{t('choose')}</p>
        ) : (
          <Chosen key={person.id} {...{ person, next, someoneIn, standBy }} />
        )}
      </section>
    </div>
  );
}

function Chosen(props: Pick<Props, 'next' | 'someoneIn' | 'standBy'> & { person: PersonHere }) {
  const { person, next, someoneIn, standBy } = props;
  const all = useTranslations('people');
  const t = useTranslations('people.sign_in');
  const [busy, setBusy] = useState(false);
  const [wrong, setWrong] = useState<{ words: string; shut: boolean } | null>(null);
  const least = leastSecretOf(person.role);

  const send = async (path: string, body: object) => {
    setBusy(true);
    const answer = await post(path, body);
    if (!('problems' in answer)) return window.location.assign(next);
    setBusy(false);
    const [problem] = answer.problems;
    if (problem) setWrong({ words: saidToHand(problem, all), shut: problem.problem === 'secret_shut' });
  };

  return (
    <>
      <h2>{t('secret_of', { name: person.name })}</h2>
      {person.hasSecret ? (
        <>
          <p className={css.note}>{t('asked_when')}</p>
          <SecretEntry
            least={least}
            letters={least > leastSecretOf('crew')}
            save={t('write_as', { initials: person.initials })}
            busy={busy}
            wrong={wrong}
            onDone={(secret) => send('/api/sign-in', { person: person.id, secret })}
          />
        </>
      ) : (
        <>
          <p>{t('no_secret', { name: person.name })}</p>
          {standBy.includes(person.id) ? (
            <KeyLink kind="save" wide href={`/people/${person.id}/secret`}>
              {all('set.save')}
            </KeyLink>
          ) : (
            <p className={css.note}>{t('no_secret_help', { name: person.name })}</p>
          )}
        </>
      )}
      {someoneIn ? (
        <Key
          kind="plain"
          wide
          disabled={busy}
          sub={t('by_name_note')}
          onClick={() => send('/api/hand', { person: person.id })}
        >
          {t('by_name')}
        </Key>
      ) : null}
    </>
  );
}
