'use client'; // keeps what is typed
import { toNestErrors } from '@hookform/resolvers';
import { useState } from 'react';
import { type FieldError, type Resolver, useForm } from 'react-hook-form';
import type * as z from 'zod';
import { problemsOf } from '#shared/entries/issues.ts';
import type { Problem } from '#shared/problem.ts';
import type { SaidProblem } from '#shared/receipt.ts';
import { fieldOf } from './field-of.ts';
import type { Typed } from './typed-values.ts';
import { useProblemWords } from './use-problem-words.ts';

type Said = Problem & { words?: SaidProblem['words'] };
export type TypedFormOf<T> = {
  start: Typed;
  /** What each field is called: above it, and in the summary of problems. */
  labels: Record<string, string>;
  /** What the typed values mean, before the schema has looked at it. */
  meaning: (typed: Typed) => unknown;
  schema: z.ZodType<T>;
  /** What no single member can say, in words, by field. */
  also?: ((typed: Typed) => { field: string; words: string }[]) | undefined;
};

/**
 * A form over the schema that the server uses too. What was typed stays; each problem stands under its field and
 * in the summary, in words.
 */
export function useTypedForm<T>({ start, labels, meaning, schema, also }: TypedFormOf<T>) {
  const wordsOf = useProblemWords();
  const fields = Object.keys(start);
  const [refused, setRefused] = useState<readonly Said[]>([]);
  const [attempt, setAttempt] = useState(0);

  const resolver: Resolver<Typed> = (typed, _context, options) => {
    const candidate = meaning(typed);
    const parsed = schema.safeParse(candidate);
    const found = parsed.success
      ? []
      : problemsOf(parsed.error, candidate).map((one) => ({
          field: fieldOf(one.field, fields) ?? 'root',
          words: wordsOf(one),
        }));
    const all = [...(also?.(typed) ?? []), ...found];
    if (all.length === 0) return { values: typed, errors: {} };
    const errors: Record<string, FieldError> = {};
    for (const { field, words } of all) errors[field] ??= { type: 'typed', message: words };
    return { values: {}, errors: toNestErrors(errors, options) };
  };
  const form = useForm<Typed>({ defaultValues: start, resolver, shouldFocusError: false });

  const shownAs = (field: string | undefined, words: string) => ({
    field,
    label: field === undefined ? undefined : labels[field],
    words,
  });
  const errors = [
    ...Object.entries(form.formState.errors).map(([field, error]) =>
      shownAs(field === 'root' ? undefined : field, String(error?.message ?? '')),
    ),
    ...refused.map((one) => shownAs(fieldOf(one.field, fields) ?? undefined, wordsOf(one))),
  ];
  const errorOf = (name: string) => errors.find((one) => one.field === name)?.words;

  /** What a field needs: its registration, its label, its id and its problem. */
  const field = (name: string) => {
    const defaultValue = String(start[name] ?? ''); // so that the page is right before its script has come
    return {
      ...form.register(name),
      id: name,
      label: labels[name] ?? name,
      defaultValue,
      error: errorOf(name),
    };
  };
  /** What a group of picks needs. */
  const group = (name: string) => ({ id: name, label: labels[name] ?? name, error: errorOf(name) });
  /** What a pick needs: the name is shared, the value is its own. */
  const pick = (name: string, value: string) => {
    const at = start[name];
    const defaultChecked = Array.isArray(at) ? at.includes(value) : at === value;
    return { ...form.register(name), value, defaultChecked };
  };
  const tick = (name: string) => ({ ...form.register(name), defaultChecked: start[name] === true });

  /** `send` gets what the schema made of it, and answers the server's problems ([] = taken). */
  const onSubmit = (send: (meant: T) => Promise<readonly Said[]>) =>
    form.handleSubmit(
      async (typed) => {
        setRefused(await send(schema.parse(meaning(typed))));
        setAttempt((n) => n + 1);
      },
      () => {
        setRefused([]);
        setAttempt((n) => n + 1);
      },
    );
  const wantsSignIn = refused.some(({ remedy }) => remedy === 'sign_in' || remedy === 'choose_hand');
  return {
    form,
    wantsSignIn,
    field,
    group,
    pick,
    tick,
    errors,
    attempt,
    onSubmit,
    busy: form.formState.isSubmitting,
  };
}
