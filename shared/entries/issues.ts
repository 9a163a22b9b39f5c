import type * as z from 'zod';
import type { Problem } from '../problem.ts';

type Issue = z.core.$ZodIssue;
type Found = Pick<Problem, 'problem' | 'remedy'> & { values?: Problem['values'] };

/** What stands at `path` of what was sent; undefined where nothing does. */
function typedAt(input: unknown, path: readonly PropertyKey[]): unknown {
  let at = input;
  for (const key of path) {
    if (typeof at !== 'object' || at === null) return undefined;
    at = (at as Record<PropertyKey, unknown>)[key];
  }
  return at;
}

const blank = (value: unknown): boolean =>
  value === undefined || value === null || (typeof value === 'string' && value.trim() === '');

/** A value as it can stand in a message: short, and never an object. */
const shown = (value: unknown): string | number =>
  typeof value === 'number' ? value : typeof value === 'string' ? value.slice(0, 60) : typeof value;

const formats: Readonly<Record<string, Found>> = {
  datetime: { problem: 'not_an_instant', remedy: 'time_with_offset' },
  date: { problem: 'not_a_date', remedy: 'date_as_digits' },
  uuid: { problem: 'not_an_id', remedy: 'reload' },
};

function sizeFound(issue: Issue & { code: 'too_small' | 'too_big' }): Found {
  const small = issue.code === 'too_small';
  const figure = Number(small ? issue.minimum : issue.maximum);
  const values = small ? { least: figure } : { most: figure };
  if (issue.origin === 'string')
    return small
      ? { problem: 'too_short', remedy: 'write_more', values }
      : { problem: 'too_long', remedy: 'write_less', values };
  if (issue.origin === 'array' || issue.origin === 'set')
    return small
      ? { problem: 'too_few', remedy: 'choose_more', values }
      : { problem: 'too_many', remedy: 'choose_fewer', values };
  return small
    ? { problem: 'figure_too_small', remedy: 'figure_in_range', values }
    : { problem: 'figure_too_large', remedy: 'figure_in_range', values };
}

function found(issue: Issue, value: unknown): Found {
  if (issue.code === 'unrecognized_keys')
    return { problem: 'unknown_field', remedy: 'leave_out', values: { name: issue.keys.join(', ') } };
  if (blank(value)) return { problem: 'missing', remedy: 'fill_in' };
  if (issue.code === 'too_small' || issue.code === 'too_big') return sizeFound(issue);
  if (issue.code === 'invalid_format')
    return formats[issue.format] ?? { problem: 'wrong_form', remedy: 'see_example' };
  if (issue.code === 'invalid_value') return { problem: 'not_offered', remedy: 'choose_offered' };
  if (issue.code === 'invalid_type' && issue.expected === 'number')
    return { problem: 'not_a_number', remedy: 'type_number' };
  if (issue.code === 'invalid_type' && issue.expected === 'int')
    return { problem: 'not_whole', remedy: 'type_whole' };
  return { problem: 'wrong_shape', remedy: 'reload' };
}

/**
 * What a schema refused, as problems in the order found. `input` is what was parsed (a message shows the value);
 * `prefix` goes before each path, e.g. "3" for the fourth draft of an array.
 */
export function problemsOf(error: { issues: readonly Issue[] }, input: unknown, prefix = ''): Problem[] {
  return error.issues.map((issue) => {
    const value = typedAt(input, issue.path);
    const { problem, remedy, values = {} } = found(issue, value);
    const path = [prefix, ...issue.path.map(String)].filter((part) => part !== '').join('.');
    return { field: path, problem, remedy, values: { ...values, typed: shown(value ?? '') } };
  });
}
