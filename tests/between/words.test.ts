import { describe, expect, it } from 'vitest';
import { messages } from '#shared/words/messages.ts';

/** Every message of a catalogue with its key, nested keys joined by points. */
function all(catalogue: object, before = ''): [string, string][] {
  return Object.entries(catalogue).flatMap(([key, value]): [string, string][] =>
    typeof value === 'string' ? [[before + key, value]] : all(value as object, `${before + key}.`),
  );
}

/** Words with which food would be released, praised or called good. None may stand in what the tool works out. */
const release = {
  en: /\b(safe|safely|ok|okay|pass(?:ed)?|valid|compliant|approved|cleared|released?|serve|good to|will make it|in time|edible|fine|great|well done|kept)\b/i,
  es: /\b(segur[oa]s?|inocu[oa]s?|ok|aprobad[oa]s?|v[áa]lid[oa]s?|conforme|liberad[oa]s?|servir|s[ií]rvel[oa]s?|apt[oa]s?|a tiempo|bien hecho|cumplido|comestible)\b/i,
};
/** Sentences that speak of certainty of a bound, or say that nothing is released: read one by one. */
const read = {
  en: {
    'computed.use.W': 'It passes no food',
    no_release: 'It never passes food',
  },
  es: {
    'input.heat_off': 'apagado seguro',
    'level.heater_off': 'calor apagado seguro',
  },
} as const;

describe('the words of what lies between two looks', () => {
  for (const language of ['en', 'es'] as const) {
    it(`release no food (${language})`, () => {
      const said = all(messages[language].science).filter(([key]) => !(key in read[language]));
      expect(said.length).toBeGreaterThan(150);
      expect(said.filter(([, words]) => release[language].test(words))).toEqual([]);
    });

    it(`has no sentence read one by one that has changed since (${language})`, () => {
      const known = new Map(all(messages[language].science));
      for (const [key, words] of Object.entries(read[language])) expect(known.get(key)).toContain(words);
    });

    it(`ends no sentence with an exclamation mark (${language})`, () => {
      expect(all(messages[language].science).filter(([, words]) => /[!¡]/.test(words))).toEqual([]);
    });
  }

  it('can see a release when there is one', () => {
    expect(release.en.test('It is safe to serve.')).toBe(true);
    expect(release.es.test('Es segura y está a tiempo.')).toBe(true);
  });

  it('has no word for a cooling of which nothing is to be warned', () => {
    for (const language of ['en', 'es'] as const)
      expect(Object.keys(messages[language].science.cooling.standing).sort()).toEqual([
        'may_miss',
        'no_deadline',
        'past',
        'probably_misses',
      ]);
  });

  it('says of every class what it may be used for, and of a reheat that it is begun and not finished', () => {
    for (const language of ['en', 'es'] as const)
      expect(Object.keys(messages[language].science.computed.use)).toEqual(['S', 'W', 'A']);
    expect(messages.en.science.cooling.reheat).toContain('Started by then, not finished');
    expect(messages.es.science.cooling.reheat).toContain('Empezado para entonces, no terminado');
  });
});
