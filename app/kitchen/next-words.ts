import { useTranslations } from 'next-intl';
import type { NextAction } from '#lib/fold/views.ts';

/** What to do next, in words. */
export function useNextWords(): (action: NextAction) => string {
  const t = useTranslations('kitchen.next');
  return ({ key, values }) => t(key, values);
}
