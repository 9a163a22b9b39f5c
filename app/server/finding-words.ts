import { createTranslator } from 'use-intl/core';
import type { Finding } from '#db/health-findings.ts';
import { type Language, messages } from '#shared/words/messages.ts';

/** What asks for a hand, in words. */
export function findingWords(
  { key, values }: Finding,
  locale: Language,
): { problem: string; remedy: string } {
  const t = createTranslator({
    locale,
    messages: messages[locale],
    namespace: 'health.finding',
    timeZone: 'UTC',
  });
  return { problem: t(`${key}.problem`, values as never), remedy: t(`${key}.remedy`, values as never) };
}
