import { notFound } from 'next/navigation';
import { getTranslations } from 'next-intl/server';
import { v7 } from 'uuid';
import { changeableFigure } from '#lib/fold/changeable-figures.ts';
import { limitsChanges } from '#shared/entries/limits.ts';
import { SetUpSheet } from '../../SetUpSheet.tsx';
import { setUpPage } from '../../set-up-page.ts';
import { standingLimits } from '../own-limits.ts';
import { ChangeForm } from './ChangeForm.tsx';

/** One figure of the limits in force: a stricter one freely, a looser one with its ground. */
export default async function Page({ params }: { params: Promise<{ role: string }> }) {
  const { kitchen, by, cannot, was } = await setUpPage('manager');
  const asked = limitsChanges.keyof().safeParse((await params).role);
  const standing = standingLimits(kitchen);
  const { site } = kitchen;
  if (!asked.success || standing === null || site === null) notFound();
  const { published, own } = standing;
  const figure = changeableFigure(published, asked.data);
  if (figure === null) notFound();
  const t = await getTranslations('limits');
  const fresh = {
    limits: v7(),
    name: t('form.own_name', { kitchen: site.name }),
    extends: published.id,
    changes: {},
    active: true,
  };
  return (
    <SetUpSheet
      title={t(`change.${figure.role}`)}
      back={{ href: '/set-up/limits', words: t('title') }}
      cannot={cannot}
      words={['limits']}
    >
      <ChangeForm
        site={site}
        figure={figure}
        published={published}
        own={own ?? fresh}
        was={[was('site', 'site'), own && was('limits', own.limits)].filter((id) => id !== null)}
        hand={{ id: by, name: kitchen.people.get(by)?.name ?? '' }}
        cannot={cannot}
      />
    </SetUpSheet>
  );
}
