import { createTranslator } from 'use-intl/core';
import type { Io } from '#bin/io.ts';
import type { Db } from '#db/connect.ts';
import { listSites, loadKinds } from '#db/load.ts';
import type { Body } from '#shared/entries/entry.ts';
import { type Language, messages } from '#shared/words/messages.ts';

export const eraseWords = (locale: Language) =>
  createTranslator({ locale, messages: messages[locale], namespace: 'erase' });
export type EraseWords = ReturnType<typeof eraseWords>;

/** The site that a command is about: the one that is named, else the only one. Null = it cannot be told, and was said. */
export async function siteAsked(db: Db, named: string | undefined, io: Io, t: EraseWords) {
  const sites = (await listSites(db)).map(({ site }) => site);
  const found = named === undefined ? sites : sites.filter((site) => site === named.toLowerCase());
  const [site] = found;
  if (sites.length === 0) {
    io.err(t('refused.no_kitchen.problem'));
    return null;
  }
  if (site !== undefined && found.length === 1) return site;
  io.err(t('which_site', { sites: sites.join(', ') }));
  return null;
}

/**
 * The person whose decision it is: an owner who works here, or a manager where there is no owner. The only one need
 * not be named. Null = it cannot be told, and was said.
 */
export async function decider(
  db: Db,
  site: string,
  named: string | undefined,
  io: Io,
  t: EraseWords,
): Promise<Body<'person'> | null> {
  const people = new Map((await loadKinds(db, site, ['person'])).map(({ body }) => [body.person, body]));
  const active = [...people.values()].filter((one) => one.active);
  const owners = active.filter(({ role }) => role === 'owner');
  const may = owners.length > 0 ? owners : active.filter(({ role }) => role === 'manager');
  const typed = named?.trim().toLowerCase();
  const found = may.filter(
    ({ name, initials }) =>
      typed === undefined || [name.toLowerCase(), initials.toLowerCase()].includes(typed),
  );
  const [one] = found;
  if (one !== undefined && found.length === 1) return one;
  io.err(may.length === 0 ? t('by_nobody') : t('by_whom', { names: may.map(({ name }) => name).join(', ') }));
  return null;
}
