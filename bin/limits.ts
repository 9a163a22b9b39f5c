import { createTranslator } from 'use-intl/core';
import { groupedFigures, type ListedFigure, listedFigures } from '#lib/limits/listing.ts';
import type { Profile } from '#lib/limits/profile.ts';
import { profile, profileIds } from '#lib/limits/profiles.ts';
import { messages } from '#shared/words/messages.ts';
import { noteIn } from '#shared/words/note-in.ts';
import { type Io, terminal } from './io.ts';
import { languageOf } from './with-book.ts';

const wordsOf = (io: Io) => {
  const locale = languageOf(io.env);
  return createTranslator({ locale, messages: messages[locale], namespace: 'cli.limits' });
};
type Words = ReturnType<typeof wordsOf>;
type Said = (text: string) => string;

function figureLines(roles: readonly string[], figure: ListedFigure, t: Words, said: Said): string[] {
  const says = [figure.value, figure.words && said(figure.words)].filter((each) => each !== null).join('; ');
  const dates = [
    figure.from === null ? '' : t('from', { date: figure.from }),
    figure.until === null ? '' : t('until', { date: figure.until }),
  ].filter((each) => each !== '');
  const force = t(`force.${figure.force}`);
  const checked = t(`checked.${figure.checked}`);
  return [
    `    ${roles.join(', ')}: ${says === '' ? figure.speaks_of : says}`,
    `        ${[figure.section, figure.edition, force, checked, ...dates].join('; ')}`,
    `        ${t('where', { where: figure.where })}`,
    ...(figure.disputed === null ? [] : [`        ${t('disputed', { what: said(figure.disputed) })}`]),
  ];
}

function profileLines(one: Profile, t: Words, said: Said): string[] {
  const figures = groupedFigures(listedFigures(one));
  return [
    `${one.id}: ${one.name}`,
    `  ${[one.place, t(`force.${one.force}`), one.edition].join('; ')}`,
    ...(figures.length === 0 ? [`    ${t('none')}`] : []),
    ...figures.flatMap(({ roles, figure }) => figureLines(roles, figure, t, said)),
    ...one.notes.map((note) => `  ${t('note', { note: said(note) })}`),
    '',
  ];
}

const jsonOf = ({ figures: _, ...one }: Profile, full: Profile): object => ({
  ...one,
  figures: listedFigures(full),
});

/**
 * `holdproof limits [ID…] [--json]`: which limits are shipped, each figure with its section, edition, force and how
 * it was checked. Needs no database.
 * @returns 0, or 3 when an option or an id is not known
 */
export function runLimits(args: string[], io: Io = terminal): number {
  const t = wordsOf(io);
  const said: Said = (text) => noteIn(languageOf(io.env), text).words;
  const named = args.filter((arg) => !arg.startsWith('-'));
  const options = args.filter((arg) => arg.startsWith('-'));
  if (options.includes('--help') || options.includes('-h')) {
    io.out(t('usage'));
    return 0;
  }
  const odd = options.filter((option) => option !== '--json');
  const unknown = named.filter((id) => profile(id) === null);
  for (const typed of odd) io.err(t('unknown_option', { typed }));
  for (const typed of unknown) io.err(t('unknown', { typed, choices: profileIds.join(', ') }));
  if (odd.length + unknown.length > 0) return 3;
  const shown = (named.length > 0 ? named : profileIds).flatMap((id) => profile(id) ?? []);
  if (options.includes('--json'))
    io.out(JSON.stringify({ profiles: shown.map((one) => jsonOf(one, one)) }, null, 2));
  else io.out([...shown.flatMap((one) => profileLines(one, t, said)), t('closing')].join('\n'));
  return 0;
}
