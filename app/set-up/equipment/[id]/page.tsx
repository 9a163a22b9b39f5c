import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { Foot } from '#app/ui/Foot.tsx';
import { KeyLink } from '#app/ui/KeyLink.tsx';
import { sideOf } from '#lib/between/cabinet-record.ts';
import { SetUpSheet } from '../../SetUpSheet.tsx';
import { setUpPage } from '../../set-up-page.ts';
import { EquipmentForm } from '../EquipmentForm.tsx';

export default async function Page({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  const { kitchen, by, cannot, was } = await setUpPage();
  const known = kitchen.equipment.get(id) ?? null;
  if (id !== 'new' && known === null) notFound();
  const t = await getTranslations('setup.equipment');
  const cabinet = await getTranslations('cabinet');
  const last = Math.max(0, ...[...kitchen.equipment.values()].map(({ order }) => order));
  return (
    <SetUpSheet
      title={known?.name ?? t('new')}
      back={{ href: '/set-up/equipment', words: t('title') }}
      cannot={cannot}
    >
      <EquipmentForm
        known={known}
        was={was('equipment', id)}
        next={last + 1}
        unit={kitchen.site?.unit ?? 'degF'}
        by={by}
        cannot={cannot}
      />
      {known !== null && sideOf(known.kind) !== null ? (
        <Foot>
          <KeyLink kind="plain" href={`/cabinet/${known.equipment}`}>
            {cabinet('open')}
          </KeyLink>
        </Foot>
      ) : null}
    </SetUpSheet>
  );
}
