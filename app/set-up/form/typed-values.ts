/** What a form holds: flat, as typed, by the path of the body's member with "_" for ".". */
export type Typed = Record<string, string | boolean | string[]>;

export const textOf = (typed: Typed, name: string): string => {
  const value = typed[name];
  return typeof value === 'string' ? value.trim() : '';
};

/** Blank is unknown: null, never ''. */
export const wordsOrNull = (typed: Typed, name: string): string | null => textOf(typed, name) || null;

/** Blank is null, a decimal comma is a point; what is no number stays as typed, so that the schema can name it. */
export function numberOrNull(typed: Typed, name: string): number | string | null {
  const text = textOf(typed, name);
  return text === '' ? null : numberOf(text);
}

/** One number, or the words that are none. */
export function numberOf(text: string): number | string {
  const number = Number(text.replace(',', '.'));
  return Number.isNaN(number) ? text : number;
}

export const ticked = (typed: Typed, name: string): boolean => typed[name] === true;

export const listOf = (typed: Typed, name: string): string[] => {
  const value = typed[name];
  return Array.isArray(value) ? value : typeof value === 'string' && value !== '' ? [value] : [];
};

/** Words or figures with commas, spaces or new lines between them. */
export const partsOf = (typed: Typed, name: string): string[] =>
  textOf(typed, name)
    .split(/[\s,;]+/)
    .filter(Boolean);

/** A number as a field shows it; unknown is blank. */
export const shown = (value: number | string | null | undefined): string =>
  value === null || value === undefined ? '' : String(value);
