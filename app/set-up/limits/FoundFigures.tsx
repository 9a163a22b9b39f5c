'use client'; // fetches all published figures only when somebody wants to see them
import { useTranslations } from 'next-intl';
import { localProfile } from '#lib/fold/local-profile.ts';
import { profile } from '#lib/limits/profiles.ts';
import type { Body } from '#shared/entries/entry.ts';
import { LimitsFigures } from './LimitsFigures.tsx';

/** The figures of limits by their id, published or made in this kitchen. */
export default function FoundFigures({ id, made }: { id: string; made: readonly Body<'limits'>[] }) {
  const t = useTranslations('limits.pick');
  const own = made.find(({ limits }) => limits === id);
  const published = profile(own?.extends ?? id);
  if (published === null) return <p>{t('not_known')}</p>;
  return <LimitsFigures profile={own ? localProfile(own, published) : published} />;
}
