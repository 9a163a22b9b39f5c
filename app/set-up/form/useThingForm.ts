'use client'; // sends what was typed
import { useRouter } from 'next/navigation';
import { useCallback, useEffect, useRef, useState } from 'react';
import type * as z from 'zod';
import { draft, postEntries } from '#app/client/post-entries.ts';
import { type Body, type Draft, kinds, type setUpKinds } from '#shared/entries/entry.ts';
import type { Typed } from './typed-values.ts';
import { useKeptTyped } from './useKeptTyped.ts';
import { type TypedFormOf, useTypedForm } from './useTypedForm.ts';

export type SetUpKind = (typeof setUpKinds)[number];

type Options<K extends SetUpKind> = Omit<TypedFormOf<Body<K>>, 'schema'> & {
  kind: K;
  by: string;
  /** Where to go when it is in the book; without it the form stays and says so. */
  after?: string | undefined;
  /** The entry from which the form is shown: what another hand changed since is refused, not written over. */
  was?: string | null | undefined;
};

/** One thing of the set-up: each save is an entry. The same words sent again keep their id and write nothing twice. */
export function useThingForm<K extends SetUpKind>({ kind, by, after, was, ...options }: Options<K>) {
  const schema = kinds[kind].body as unknown as z.ZodType<Body<K>>;
  const typed = useTypedForm<Body<K>>({ ...options, schema });
  const router = useRouter();
  const made = useRef<{ of: string; draft: Draft } | null>(null);
  const [saved, setSaved] = useState(false);

  const { form } = typed;
  const start = JSON.stringify(options.start);
  // What nobody touched follows the book; what was typed stays.
  const putBack = useCallback(
    (kept: Typed) => form.reset({ ...JSON.parse(start), ...kept }, { keepDefaultValues: true }),
    [form, start],
  );
  const keep = useKeptTyped(putBack);
  void form.formState.dirtyFields; // read, so that the form keeps count of what was touched
  const shown = useRef(start);
  useEffect(() => {
    if (shown.current === start) return;
    shown.current = start;
    form.reset(JSON.parse(start), { keepDirtyValues: true, keepErrors: true });
  }, [form, start]);

  const submit = typed.onSubmit(async (body) => {
    setSaved(false);
    const of = JSON.stringify(body);
    if (made.current?.of !== of) made.current = { of, draft: draft(kind, body, { by }) as unknown as Draft };
    const answer = await postEntries([made.current.draft], was == null ? {} : { was: [was] });
    const problems = 'problems' in answer ? answer.problems : answer.receipts.flatMap((one) => one.problems);
    if (problems.length > 0) {
      keep(touched(form.getValues(), options.start));
      if (problems.some(({ problem }) => problem === 'changed_meanwhile')) {
        made.current = null; // saved again it stands on what is in the book by then
        router.refresh();
      }
      return problems;
    }
    made.current = null; // saved again later it is a new entry
    form.reset(form.getValues());
    setSaved(true);
    if (after !== undefined) router.push(after);
    router.refresh();
    return [];
  });
  return { ...typed, submit, saved };
}

/** What differs from what the form was shown with: only that waits for a sign-in, the rest may change meanwhile. */
const touched = (typed: Typed, start: Typed): Typed =>
  Object.fromEntries(
    Object.entries(typed).filter(([name, value]) => JSON.stringify(value) !== JSON.stringify(start[name])),
  );
