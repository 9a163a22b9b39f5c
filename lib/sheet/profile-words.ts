import type { CanonicalDay } from './day-schema.ts';
import type { SheetNames } from './sheet-names.ts';

type ProfileDoc = CanonicalDay['profile'];

/**
 * By which code a day was judged, for the foot of the print and the head of the screen alike: "Judged by FDA Food Code
 * 2022." or with each local change, its grounds (authority, document, date) and who entered it.
 */
export function profileWords(names: SheetNames): string {
  const { say, day } = names;
  const { name, edition, local_changes: changes, entered } = day.profile;
  const called = edition === null || name.includes(edition) ? name : `${name}, ${edition}`;
  if (changes.length === 0) return say('sheet.profile', { name: called });
  // One section often holds several figures; it is named once.
  const sections = [...new Set(changes.map((change) => changeWords(names, change)))].join(', ');
  const judged = say('sheet.profile_changed', { name: called, sections });
  return entered ? `${judged} ${enteredWords(names, entered)}` : judged;
}

/** A section, its ground, and who entered it where that is not who wrote the profile last. */
function changeWords(names: SheetNames, change: ProfileDoc['local_changes'][number]): string {
  const { name, entered: whole } = names.day.profile;
  const { section, edition: ground, entered } = change;
  const grounded = !whole || ground === name ? section : `${section} (${ground})`;
  return entered
    ? names.say('sheet.profile_change_entered', {
        change: grounded,
        name: names.person(entered.by),
        at: names.moment(entered.at),
      })
    : grounded;
}

const enteredWords = (names: SheetNames, { by, at }: { by: string; at: string }): string =>
  names.say('sheet.profile_entered', { name: names.person(by), at: names.moment(at) });
