'use client'; // sends what was typed
import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import type * as z from 'zod';
import { draft, postEntries } from '#app/client/post-entries.ts';
import { type Body, type Draft, kinds, type setUpKinds } from '#shared/entries/entry.ts';
import { useKeptTyped } from './useKeptTyped.ts';
import { type TypedFormOf, useTypedForm } from './useTypedForm.ts';

export type SetUpKind = (typeof setUpKinds)[number];

type Options<K extends SetUpKind> = Omit<TypedFormOf<Body<K>>, 'schema'> & {
  kind: K;
  by: string;
  /** Where to go when it is in the book; without it the form stays and says so. */
  after?: string | undefined;
};

/** One thing of the set-up: each save is an entry. The same words sent again keep their id and write nothing twice. */
export function useThingForm<K extends SetUpKind>({ kind, by, after, ...options }: Options<K>) {
  const schema = kinds[kind].body as unknown as z.ZodType<Body<K>>;
  const typed = useTypedForm<Body<K>>({ ...options, schema });
  const router = useRouter();
  const made = useRef<{ of: string; draft: Draft } | null>(null);
  const [saved, setSaved] = useState(false);

  const keep = useKeptTyped(typed.form.reset);

  const submit = typed.onSubmit(async (body) => {
    setSaved(false);
    const of = JSON.stringify(body);
    if (made.current?.of !== of) made.current = { of, draft: draft(kind, body, { by }) as unknown as Draft };
    const answer = await postEntries([made.current.draft]);
    const problems = 'problems' in answer ? answer.problems : answer.receipts.flatMap((one) => one.problems);
    if (problems.length > 0) {
      keep(typed.form.getValues());
      return problems;
    }
    made.current = null; // saved again later it is a new entry
    setSaved(true);
    if (after !== undefined) router.push(after);
    router.refresh();
    return [];
  });
  return { ...typed, submit, saved };
}
