import { createTranslator } from 'use-intl/core';
import { type Language, messages } from '#shared/words/messages.ts';

/** One message by its full key ("sheet.head.broken") with its values, in the language of the sheet. */
export type Say = (key: string, values?: Record<string, string | number>) => string;

/** A key without words answers with itself; a test asks for every key that the sheet uses. */
export function sheetWords(language: Language): Say {
  const translator = createTranslator({
    locale: language,
    messages: messages[language] as Record<string, object>,
    timeZone: 'UTC',
    onError: () => {},
    getMessageFallback: ({ key }) => key,
  }) as unknown as Say;
  // A day's document does not say whether a batch is counted in pans, so its numbers are of pieces.
  return (key, values) => translator(key, { counted: 'pieces', ...values });
}
