import type { CanonicalDay } from './day-schema.ts';
import type { SheetNames } from './sheet-names.ts';

type ProfileDoc = CanonicalDay['profile'];

/**
 * By which code a day was judged, for the print and the head of the screen alike: "Judged by FDA Food Code 2022." or
 * with what is local in it. Of limits made on screen that is each figure, its ground (section; authority, document and
 * date) and who entered it when.
 */
export function profileWords(names: SheetNames): string {
  const { say, day } = names;
  const { local_changes: changes, entered } = day.profile;
  const name = calledOf(day.profile);
  if (changes.length === 0) return say('sheet.profile', { name });
  if (entered) {
    const made = changes.map((change) => madeWords(names, change)).join('; ');
    return `${say('sheet.profile_made', { name, changes: made })} ${enteredWords(names, entered)}`;
  }
  // One section often holds several figures; it is named once.
  const sections = [...new Set(changes.map(({ section }) => section))].join(', ');
  return say('sheet.profile_changed', { name, sections });
}

/** Signs that stand in the foot of a printed page beside its number, in the two lines that it has for them. */
const mostInFoot = 150;

/**
 * The same for the foot of every printed page: whole where it fits, else where the whole stands.
 * @returns `first`: what page 1 says besides; null = the foot says it all
 */
export function profileInPrint(names: SheetNames): { foot: string; first: string | null } {
  const whole = profileWords(names);
  if (whole.length <= mostInFoot) return { foot: whole, first: null };
  return {
    foot: names.say('sheet.profile_see_first', { name: calledOf(names.day.profile) }),
    first: whole,
  };
}

const calledOf = ({ name, edition }: ProfileDoc): string =>
  edition === null || name.includes(edition) ? name : `${name}, ${edition}`;

/** One figure of limits made on screen, and who entered it where that is not who wrote them last. */
function madeWords(names: SheetNames, change: ProfileDoc['local_changes'][number]): string {
  const { section, edition: ground, entered, role } = change;
  const grounded = ground === names.day.profile.name ? section : `${section} (${ground})`;
  const figure = `${names.say(`limits.change.${role}`)}: ${grounded}`;
  return entered
    ? names.say('sheet.profile_change_entered', {
        change: figure,
        name: names.person(entered.by),
        at: names.moment(entered.at),
      })
    : figure;
}

const enteredWords = (names: SheetNames, { by, at }: { by: string; at: string }): string =>
  names.say('sheet.profile_entered', { name: names.person(by), at: names.moment(at) });
