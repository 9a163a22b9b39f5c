import Link from 'next/link';
import { getTranslations } from 'next-intl/server';
import type { ReactNode } from 'react';
import { Foot } from '#app/ui/Foot.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import css from './ThingList.module.css';

export type ThingShown = { id: string; name: string; note: ReactNode; active: boolean };
type Props = { base: string; things: readonly ThingShown[]; empty: string; add: string };

/** Things of one kind: each a way to its form; those out of use stand below, with their word. */
export async function ThingList({ base, things, empty, add }: Props) {
  const t = await getTranslations('setup');
  const inOrder = [...things].sort((a, b) => Number(b.active) - Number(a.active));
  return (
    <>
      {things.length === 0 ? <p className={css.empty}>{empty}</p> : null}
      <ul className={css.list}>
        {inOrder.map(({ id, name, note, active }) => (
          <li key={id}>
            <Link href={`${base}/${id}`} prefetch={false} className={active ? css.thing : css.out}>
              <span className={css.name}>{name}</span>
              <span className={css.note}>
                {note}
                {active ? null : ` · ${t('out_of_use')}`}
              </span>
            </Link>
          </li>
        ))}
      </ul>
      <Foot>
        <KeyLink kind="save" href={`${base}/new`}>
          {add}
        </KeyLink>
        <KeyLink kind="plain" href="/set-up">
          {t('title')}
        </KeyLink>
      </Foot>
    </>
  );
}
