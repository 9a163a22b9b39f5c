import type { Draft } from './entry.ts';

/** What a line of the book needs from outside: messages of the catalogue by full key, and names of ids. */
export type Sayer = {
  message: (key: string, values?: Record<string, string | number>) => string;
  /** Name of a person, equipment, probe, food or batch; null when it is none of them. */
  name: (id: string) => string | null;
};

/** Members of bodies whose values are words of the catalogue, with the group in which they stand. */
const wordGroups: Readonly<Record<string, string>> = {
  step: 'common.step',
  spot: 'common.spot',
  unit: 'common.unit',
  role: 'common.role',
  colour: 'common.colour',
  language: 'common.language',
  class: 'common.food_class',
  action: 'entry.word.action',
  decision: 'entry.word.decision',
  bath: 'entry.word.bath',
  could_not: 'entry.word.could_not',
  decided_via: 'entry.word.decided_via',
  field: 'entry.word.field',
  made: 'entry.word.made',
  status: 'entry.word.status',
};

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

function value(sayer: Sayer, member: string, found: unknown): string | number {
  if (found === null || found === undefined || found === '') return 'none';
  if (typeof found === 'number') return found;
  if (typeof found === 'boolean') return found ? 'yes' : 'no';
  if (Array.isArray(found))
    return found.length === 0 ? 'none' : found.map((each) => value(sayer, '', each)).join(', ');
  if (typeof found !== 'string') return 'none';
  if (uuid.test(found)) return sayer.name(found) ?? sayer.message('entry.word.unnamed');
  const group = wordGroups[member];
  return group === undefined ? found : sayer.message(`${group}.${found}`);
}

/** Values of the message `entry.<kind>`: each member of the body by its name, and who wrote it as `by`. */
export function entryValues(
  entry: Pick<Draft, 'kind' | 'by' | 'body'>,
  sayer: Sayer,
): Record<string, string | number> {
  const members = Object.entries(entry.body).map(([member, found]) => {
    const group = entry.kind === 'equipment' && member === 'kind' ? 'common.equipment' : null;
    return [member, group ? sayer.message(`${group}.${found}`) : value(sayer, member, found)] as const;
  });
  return { ...Object.fromEntries(members), by: sayer.name(entry.by) ?? sayer.message('entry.word.unnamed') };
}

/** The entry in one line, in words. */
export const entryLine = (entry: Pick<Draft, 'kind' | 'by' | 'body'>, sayer: Sayer): string =>
  sayer.message(`entry.${entry.kind}`, entryValues(entry, sayer));
