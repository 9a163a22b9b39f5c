import 'server-only';
import { getTranslations } from 'next-intl/server';
import { getDb } from '#app/server/db.ts';
import { setUpOf } from '#app/server/kitchen-of.ts';
import { atLeast } from '#app/server/may-write.ts';
import { entrance } from '#app/server/session.ts';
import type { Kitchen } from '#lib/fold/book.ts';
import { standsOn, type Whole } from '#lib/fold/stood-open.ts';
import type { Role } from '#shared/entries/person.ts';

export type SetUpPage = {
  kitchen: Kitchen;
  by: string; // '' = nobody writes now
  /** Why the hand that writes cannot change this, in words; null = it can. */
  cannot: string | null;
  /** The entry by which a thing stands: what a form that shows it was shown from. */
  was: (kind: Whole, thing: string) => string | null;
};

/** What every page of the set-up needs: the set-up in force, and whether the one who writes may change it. */
export async function setUpPage(least: Role = 'lead'): Promise<SetUpPage> {
  const session = await entrance();
  const { kitchen, entries } = await setUpOf(await getDb(), session.site);
  const t = await getTranslations('setup.cannot');
  const by = session.hand ?? '';
  const person = kitchen.people.get(by);
  const bySecret = session.hands.some((hand) => hand.person === by);
  const cannot = !person
    ? t('nobody')
    : !atLeast(person.role, least)
      ? t('role', { name: person.name, role: least })
      : bySecret
        ? null
        : t('secret', { name: person.name });
  return { kitchen, by, cannot, was: (kind, thing) => standsOn(kind, thing, entries) };
}
