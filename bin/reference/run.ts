import * as z from 'zod';
import { type Answer, answer } from './answer.ts';
import { type AnyCase, anyCase } from './case.ts';
import { type Difference, differences } from './compare.ts';
import { scienceAnswer, valuesOf } from './science/answer.ts';
import { scienceSet, setDifferences } from './science/sets.ts';

/** How one case came out; `why` says in words what kept it from being compared. */
export type Outcome = { id: string; passed: boolean; why: string | null; differences: Difference[] };

const failed = (id: string, why: string): Outcome => ({ id, passed: false, why, differences: [] });

const wordsOf = (error: unknown): string =>
  error instanceof z.ZodError
    ? error.issues.map(({ path, message }) => `${path.join('.') || 'case'}: ${message}`).join('; ')
    : error instanceof Error
      ? error.message
      : String(error);

function outcome(one: AnyCase): Outcome {
  if (Object.keys(one.expected).length === 0) return failed(one.id, 'the case expects nothing');
  let got: Answer | null;
  let { expected } = one;
  try {
    got = answer(one);
    if (got === null) {
      got = scienceAnswer(one.kind, one.inputs);
      if (got !== null) expected = valuesOf(one.expected);
    }
  } catch (error) {
    return failed(one.id, wordsOf(error));
  }
  if (got === null) return failed(one.id, `no rule is built for the kind ${one.kind}`);
  const found = differences(expected, got, one.tolerance);
  return { id: one.id, passed: found.length === 0, why: null, differences: found };
}

function setOutcome(set: unknown): Outcome {
  const read = scienceSet.safeParse(set);
  if (!read.success) return failed(idOf(set), wordsOf(read.error));
  const found = setDifferences(read.data);
  return { id: read.data.id, passed: found.length === 0, why: null, differences: found };
}

const idOf = (value: unknown): string => {
  const parsed = z.object({ id: z.string() }).safeParse(value);
  return parsed.success ? parsed.data.id : '(no id)';
};

/**
 * The outcome of every case of a file's text. Text that is no file of cases is one failure; so is a file without
 * cases, for nothing was shown by it. `leaveOut` holds ids that are not run and not counted.
 */
export function runFile(text: string, leaveOut: ReadonlySet<string> = new Set()): Outcome[] {
  let file: unknown;
  try {
    file = JSON.parse(text);
  } catch (error) {
    return [failed('(file)', `this is no JSON: ${wordsOf(error)}`)];
  }
  const parsed = z
    .object({ cases: z.array(z.unknown()).optional(), sets: z.array(z.unknown()).optional() })
    .safeParse(file);
  const cases = parsed.data?.cases ?? [];
  const sets = parsed.data?.sets ?? [];
  if (cases.length + sets.length === 0) return [failed('(file)', 'this file holds no cases and no sets')];
  const outcomes = cases.map((one) => {
    const read = anyCase.safeParse(one);
    return read.success ? outcome(read.data) : failed(idOf(one), wordsOf(read.error));
  });
  outcomes.push(...sets.map(setOutcome));
  return outcomes.filter(({ id }) => !leaveOut.has(id));
}
