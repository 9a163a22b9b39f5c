'use client'; // a form
import { useTranslations } from 'next-intl';
import { useState } from 'react';
import { v7 } from 'uuid';
import { TextField } from '#app/ui/Field.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import type { Body } from '#shared/entries/entry.ts';
import { language as languages } from '#shared/entries/kind.ts';
import type { Role } from '#shared/entries/person.ts';
import { ThingFrame } from '../form/ThingFrame.tsx';
import { textOf, ticked, wordsOrNull } from '../form/typed-values.ts';
import { useThingForm } from '../form/useThingForm.ts';

type Props = {
  known: Body<'person'> | null;
  was: string | null; // the entry that says it
  roles: readonly Role[]; // none above that of the hand that writes
  taken: readonly string[]; // initials of the others
  language: 'en' | 'es';
  by: string;
  cannot: string | null;
};

const back = '/set-up/people';

export function PersonForm({ known, was, roles, taken, language, by, cannot }: Props) {
  const t = useTranslations('setup.people');
  const all = useTranslations('setup');
  const c = useTranslations('common');
  const [id] = useState(() => known?.person ?? v7());
  const form = useThingForm({
    kind: 'person',
    by,
    was,
    labels: {
      name: t('name'),
      initials: t('initials'),
      title: t('job'),
      phone: t('phone'),
      role: t('role'),
      language: t('language'),
    },
    // A new person needs a secret next.
    after: known ? back : `/people/${id}/secret`,
    start: {
      name: known?.name ?? '',
      initials: known?.initials ?? '',
      role: known?.role ?? 'crew',
      title: known?.title ?? '',
      language: known?.language ?? language,
      phone: known?.phone ?? '',
      on_call: known?.on_call ?? false,
      active: known?.active ?? true,
    },
    meaning: (typed) => ({
      person: id,
      name: textOf(typed, 'name'),
      initials: textOf(typed, 'initials'),
      role: textOf(typed, 'role'),
      title: wordsOrNull(typed, 'title'),
      language: textOf(typed, 'language'),
      phone: wordsOrNull(typed, 'phone'),
      on_call: ticked(typed, 'on_call'),
      active: ticked(typed, 'active'),
    }),
    also: (typed) => [
      ...(taken.includes(textOf(typed, 'initials'))
        ? [{ field: 'initials', words: t('initials_taken') }]
        : []),
      ...(ticked(typed, 'on_call') && textOf(typed, 'phone') === ''
        ? [{ field: 'phone', words: t('phone_missing') }]
        : []),
    ],
  });
  return (
    <ThingFrame {...form} cannot={cannot} back={back}>
      <TextField big autoComplete="off" {...form.field('name')} />
      <TextField hint={t('initials_hint')} autoComplete="off" maxLength={4} {...form.field('initials')} />
      <PickGroup {...form.group('role')}>
        {roles.map((value) => (
          <Pick
            key={value}
            title={c(`role.${value}`)}
            note={t(`role_note.${value}`)}
            {...form.pick('role', value)}
          />
        ))}
      </PickGroup>
      <TextField hint={t('job_hint')} {...form.field('title')} />
      <PickGroup {...form.group('language')} columns>
        {languages.options.map((value) => (
          <Pick key={value} title={c(`language.${value}`)} {...form.pick('language', value)} />
        ))}
      </PickGroup>
      <TextField type="tel" inputMode="tel" {...form.field('phone')} />
      <Pick type="checkbox" title={t('on_call')} note={t('on_call_note')} {...form.tick('on_call')} />
      <Pick type="checkbox" title={t('active')} note={t('active_note')} {...form.tick('active')} />
      {known ? (
        <KeyLink href={`/people/${id}/secret`} kind="plain" sub={t('secret_note')}>
          {t('secret')}
        </KeyLink>
      ) : (
        <p>{all('secret_next')}</p>
      )}
    </ThingFrame>
  );
}
