'use client'; // what is decided is typed here, and the secret asked
import { useRouter } from 'next/navigation';
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { type ClientProblem, post } from '#app/client/post-entries.ts';
import { AskSecret } from '#app/people/AskSecret.tsx';
import { TextArea } from '#app/ui/Field.tsx';
import { Key } from '#app/ui/Key.tsx';
import { Tag } from '#app/ui/Tag.tsx';
import type { Role } from '#shared/entries/person.ts';
import css from './page.module.css';
import { useKeptWords } from './useKeptWords.ts';

export type Signer = { id: string; name: string; initials: string; role: Role; tookReadings: boolean };
type Open = { ref: string; tag: number; head: string };
type Answer = { status: 'signed' } | { problems: ClientProblem[]; changes?: string[] };

type Props = {
  day: string;
  over: boolean;
  read: { hash: string; seq: number };
  open: Open[];
  signers: Signer[];
};

/** Among the words that are kept: a name that no exception has. */
const ofMeaning = 'meaning';

/** Decide what is open, say what the signature means, enter the secret again. What was typed stays on any refusal. */
export function SignBox({ day, over, read, open, signers }: Props) {
  const t = useTranslations('day.sign');
  const common = useTranslations('common');
  const router = useRouter();
  const { words, write, forget } = useKeptWords(`sign:${day}`, { [ofMeaning]: t('meaning_default') });
  const meaning = words[ofMeaning] ?? '';
  const [signer, setSigner] = useState<Signer | null>(null);
  const [problems, setProblems] = useState<ClientProblem[]>([]);
  const [changes, setChanges] = useState<string[]>([]);
  const undecided = open.filter((one) => !words[one.ref]?.trim()).length;

  const sign = async (by: Signer) => {
    setSigner(null);
    const openItems = open.map(({ ref }) => ({ ref, decision: words[ref]?.trim() ?? '' }));
    const answer = await post<Answer>(`/api/day/${day}/sign`, { by: by.id, ...read, meaning, openItems });
    const refused = 'problems' in answer;
    setProblems(refused ? answer.problems : []);
    setChanges(refused && 'changes' in answer ? (answer.changes ?? []) : []);
    if (refused) return;
    forget();
    router.refresh();
  };

  const cannot = !over ? t('not_over') : undecided > 0 ? t('decide_first', { count: undecided }) : null;
  return (
    <section className={css.sign}>
      <h2>{t('title')}</h2>
      <p className={css.note}>{t('says')}</p>
      <Said problems={problems} changes={changes} onAgain={() => router.refresh()} />
      <h3>{open.length > 0 ? t('decide') : t('nothing_open')}</h3>
      {open.map((one) => (
        <TextArea
          key={one.ref}
          id={`item-${one.tag}`}
          label={
            <>
              <Tag number={one.tag} /> {one.head}
            </>
          }
          hint={t('decide_hint')}
          rows={2}
          maxLength={200}
          value={words[one.ref] ?? ''}
          onChange={(event) => write(one.ref, event.target.value)}
        />
      ))}
      <TextArea
        id="meaning"
        label={t('meaning')}
        rows={3}
        maxLength={500}
        value={meaning}
        onChange={(event) => write(ofMeaning, event.target.value)}
      />
      {signer ? (
        <AskSecret person={signer} onDone={() => void sign(signer)} onCancel={() => setSigner(null)} />
      ) : null}
      {signers.length === 0 ? <p className={css.strip}>{t('not_manager')}</p> : null}
      {(signer ? [] : signers).map((one) => (
        <div key={one.id} className={css.signer}>
          <p className={css.ink}>{one.initials}</p>
          <p>{t('who', { name: one.name, role: common(`role.${one.role}`) })}</p>
          {one.tookReadings ? <p className={css.note}>{t('took')}</p> : null}
          <Key kind="save" wide cannot={cannot} onClick={() => setSigner(one)}>
            {t('key')}
          </Key>
        </div>
      ))}
    </section>
  );
}

type SaidProps = { problems: readonly ClientProblem[]; changes: readonly string[]; onAgain: () => void };

function Said({ problems, changes, onAgain }: SaidProps) {
  const t = useTranslations('day.sign');
  if (problems.length === 0) return null;
  return (
    <div role="alert" className={css.strip}>
      {problems.map((one) => (
        <p key={one.problem}>{one.words ? `${one.words.problem} ${one.words.remedy}` : one.problem}</p>
      ))}
      {changes.length > 0 ? (
        <>
          <h3>{t('changes')}</h3>
          <ul>
            {changes.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </>
      ) : null}
      <Key wide onClick={onAgain}>
        {t('again')}
      </Key>
    </div>
  );
}
