import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { atLeast } from '#app/server/may-write.ts';
import { role } from '#shared/entries/person.ts';
import { SetUpSheet } from '../../SetUpSheet.tsx';
import { setUpPage } from '../../set-up-page.ts';
import { PersonForm } from '../PersonForm.tsx';

export default async function Page({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  const { kitchen, by, cannot, was } = await setUpPage();
  const known = kitchen.people.get(id) ?? null;
  if (id !== 'new' && known === null) notFound();
  const t = await getTranslations('setup.people');
  const own = kitchen.people.get(by)?.role ?? 'crew';
  const taken = [...kitchen.people.values()]
    .filter(({ person, active }) => active && person !== id)
    .map(({ initials }) => initials);
  return (
    <SetUpSheet
      title={known?.name ?? t('new')}
      back={{ href: '/set-up/people', words: t('title') }}
      cannot={cannot}
    >
      <PersonForm
        known={known}
        was={was('person', id)}
        roles={role.options.filter((one) => atLeast(own, one) || one === known?.role)}
        taken={taken}
        language={kitchen.site?.language ?? 'en'}
        by={by}
        cannot={cannot}
      />
    </SetUpSheet>
  );
}
