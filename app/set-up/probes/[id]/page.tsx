import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { SetUpSheet } from '../../SetUpSheet.tsx';
import { setUpPage } from '../../set-up-page.ts';
import { ProbeForm } from '../ProbeForm.tsx';

export default async function Page({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  const { kitchen, by, cannot, was } = await setUpPage();
  const known = kitchen.probes.get(id) ?? null;
  if (id !== 'new' && known === null) notFound();
  const t = await getTranslations('setup.probes');
  return (
    <SetUpSheet
      title={known?.name ?? t('new')}
      back={{ href: '/set-up/probes', words: t('title') }}
      cannot={cannot}
    >
      <ProbeForm
        known={known}
        was={was('probe', id)}
        unit={kitchen.site?.unit ?? 'degF'}
        by={by}
        cannot={cannot}
      />
    </SetUpSheet>
  );
}
