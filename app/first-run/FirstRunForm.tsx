'use client'; // a form
import { useTranslations } from 'next-intl';
import { useEffect, useRef, useState } from 'react';
import { v7 } from 'uuid';
import { post } from '#app/client/post-entries.ts';
import { useTypedForm } from '#app/set-up/form/useTypedForm.ts';
import type { Offered } from '#app/set-up/limits/find-limits.ts';
import { ErrorSummary } from '#app/ui/ErrorSummary.tsx';
import { Foot } from '#app/ui/Foot.tsx';
import { Key } from '#app/ui/Key.tsx';
import type { Problem } from '#shared/problem.ts';
import { firstRun } from '#shared/requests/first-run.ts';
import { leastSecretOf } from '#shared/requests/secret.ts';
import { firstMeant, firstTyped } from './first-run-typed.ts';
import { KitchenPart } from './KitchenPart.tsx';
import css from './page.module.css';
import { StartWithPart } from './StartWithPart.tsx';
import { YouPart } from './YouPart.tsx';

type Props = {
  language: 'en' | 'es';
  zones: readonly string[];
  offered: readonly Offered[];
};
const least = leastSecretOf('owner');

/** The kitchen, whoever sets it up, and what it starts with: one page, one save. */
export function FirstRunForm({ language, zones, offered }: Props) {
  const t = useTranslations('setup.first_run');
  const k = useTranslations('setup.kitchen');
  const p = useTranslations('setup.people');
  const person = useRef<string | null>(null);
  const [done, setDone] = useState(false);
  const idOf = () => (person.current ??= v7());
  const typed = useTypedForm({
    start: firstTyped(offered[0]?.id ?? ''),
    labels: {
      site_name: k('name'),
      site_zone: k('zone'),
      site_day_starts: k('day_starts'),
      site_altitude_m: k('altitude'),
      site_profile: t('limits'),
      site_unit: k('unit'),
      person_name: p('name'),
      person_initials: p('initials'),
      person_phone: p('phone'),
      person_role: t('role'),
      secret: t('secret'),
      secret_again: t('secret_again'),
      device: t('device'),
      equipment: t('equipment'),
      probes: t('probes'),
      foods: t('foods'),
      plans: t('plans'),
    },
    schema: firstRun,
    meaning: (values) => firstMeant(values, { language }, { person: idOf(), newId: v7 }),
    also: (values) => {
      const secret = String(values.secret ?? '');
      if (secret !== '' && [...secret].length < least)
        return [{ field: 'secret', words: t('secret_short', { least }) }];
      return secret === values.secret_again ? [] : [{ field: 'secret_again', words: t('secret_differs') }];
    },
  });
  useBrowserZone(typed.form, zones);

  const submit = typed.onSubmit(async (request) => {
    const answer = await post<object>('/api/first-run', request);
    if ('problems' in answer) return answer.problems as Problem[];
    setDone(true);
    window.location.assign('/');
    return [];
  });
  const busy = done ? t('done') : typed.busy ? t('busy') : null;
  return (
    <form noValidate onSubmit={submit} className={css.form}>
      <div className={css.fields}>
        <ErrorSummary errors={typed.errors} attempt={typed.attempt} />
        <KitchenPart
          typed={typed}
          zones={zones}
          offered={offered}
          now={typed.form.watch()}
          choose={(id) => typed.form.setValue('site_profile', id, { shouldDirty: true })}
        />
        <YouPart typed={typed} />
        <StartWithPart typed={typed} language={language} />
      </div>
      <Foot>
        <Key kind="save" type="submit" cannot={busy}>
          {t('open')}
        </Key>
      </Foot>
      <p role="status" className={css.said}>
        {busy}
      </p>
    </form>
  );
}

type Form = ReturnType<typeof useTypedForm>['form'];

/** The browser knows its own zone; the server must not guess it, so it is filled in after the page has come. */
function useBrowserZone({ getValues, setValue }: Form, zones: readonly string[]) {
  useEffect(() => {
    const own = Intl.DateTimeFormat().resolvedOptions().timeZone;
    if (getValues('site_zone') === '' && zones.includes(own)) setValue('site_zone', own);
  }, [getValues, setValue, zones]);
}
