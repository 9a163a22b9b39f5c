import en from './en/notes.json' with { type: 'json' };
import es from './es/notes.json' with { type: 'json' };
import type { Language } from './messages.ts';

const spanish = new Map(Object.entries(en).map(([key, text]) => [text, es[key as keyof typeof es]]));

/**
 * What stands beside published limits (notes, exceptions that a text allows, what is disputed) is written in English
 * with its figures; this says it in the language of the page where that was written too. `lang` = in which it is said.
 */
export function noteIn(language: Language, text: string): { words: string; lang: Language } {
  const told = language === 'es' ? spanish.get(text) : undefined;
  return told === undefined ? { words: text, lang: 'en' } : { words: told, lang: 'es' };
}
