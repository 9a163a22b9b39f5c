import { createTranslator } from 'use-intl/core';
import type { Misfit } from '#bin/verify/walk.ts';
import type { BackupRefused } from '#db/backup/refused.ts';
import { type Language, messages } from '#shared/words/messages.ts';

export const backupWords = (locale: Language) =>
  createTranslator({ locale, messages: messages[locale], namespace: 'backup' });

/** A refusal in two lines: the problem, then the remedy. */
export function backupRefusalWords(locale: Language, { key, values }: BackupRefused): [string, string] {
  const t = backupWords(locale);
  return [t(`refused.${key}.problem`, values as never), t(`refused.${key}.remedy`, values as never)];
}

/** How an entry does not fit, in words. */
export function misfitWords(locale: Language, { how, values }: Misfit): string {
  const t = createTranslator({ locale, messages: messages[locale], namespace: 'database.verify' });
  return t(`how.${how}`, values as never);
}
