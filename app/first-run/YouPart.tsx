import { useTranslations } from 'next-intl';
import type { useTypedForm } from '#app/set-up/form/useTypedForm.ts';
import { TextField } from '#app/ui/Field.tsx';
import { Pick, PickGroup } from '#app/ui/Pick.tsx';
import { leastSecretOf } from '#shared/requests/secret.ts';
import css from './page.module.css';

const roles = ['owner', 'manager'] as const;

/** Whoever sets up: name, role, and a secret typed twice. */
export function YouPart({
  typed,
}: {
  typed: Pick<ReturnType<typeof useTypedForm>, 'field' | 'group' | 'pick'>;
}) {
  const t = useTranslations('setup.first_run');
  const p = useTranslations('setup.people');
  const c = useTranslations('common');
  return (
    <>
      <h2 className={css.head}>{t('you')}</h2>
      <p className={css.notice}>{t('you_note')}</p>
      <TextField autoComplete="name" {...typed.field('person_name')} />
      <TextField
        hint={t('initials_hint')}
        maxLength={4}
        autoComplete="off"
        {...typed.field('person_initials')}
      />
      <PickGroup {...typed.group('person_role')} columns>
        {roles.map((value) => (
          <Pick key={value} title={c(`role.${value}`)} {...typed.pick('person_role', value)} />
        ))}
      </PickGroup>
      <TextField hint={p('on_call_note')} type="tel" autoComplete="tel" {...typed.field('person_phone')} />
      <TextField
        hint={t('secret_hint', { least: leastSecretOf('owner') })}
        type="password"
        autoComplete="new-password"
        {...typed.field('secret')}
      />
      <TextField type="password" autoComplete="new-password" {...typed.field('secret_again')} />
      <TextField hint={t('device_hint')} autoComplete="off" {...typed.field('device')} />
    </>
  );
}
